namespace BoothWatch.Service.Outputs.Influx;

/// <summary>What tells the points of this booth from those of any other.</summary>
/// <param name="Shop">Name of the shop.</param>
/// <param name="Booth">Name of the booth.</param>
/// <param name="IsDemo">True while any sensor is emulated: such points never mix with measured ones.</param>
public sealed record BoothTags(string Shop, string Booth, bool IsDemo);
