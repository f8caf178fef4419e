using BoothWatch.Readings;

namespace BoothWatch.Records;

/// <summary>A sensor of the booth.</summary>
/// <param name="Name">The configured name, for example <c>boothAir</c>.</param>
/// <param name="Description">What and where it is, for people.</param>
/// <param name="Quantities">What it measures.</param>
/// <param name="IsEmulated">True when it measures nothing real.</param>
/// <param name="LastCheck">The last check against a reference; null: no check on record.</param>
public sealed record RecordSensor(string Name, string Description, IReadOnlyList<Quantity> Quantities, bool IsEmulated, SensorCheck? LastCheck);
