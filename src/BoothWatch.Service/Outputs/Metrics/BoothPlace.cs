namespace BoothWatch.Service.Outputs.Metrics;

/// <summary>Labels that tell the figures of this booth from those of any other.</summary>
/// <param name="Shop">Name of the shop.</param>
/// <param name="Booth">Name of the booth.</param>
public sealed record BoothPlace(string Shop, string Booth);
