using System.Collections.Immutable;

namespace BoothWatch.Readings;

/// <summary>All that the booth knows at one moment. Immutable; a quantity without a sensor reads as missing.</summary>
/// <param name="Time">Wall-clock time of the snapshot, UTC.</param>
/// <param name="ClockProven">False while the wall clock may be wrong (a board without a battery clock before time sync).</param>
/// <param name="Readings">One reading a quantity.</param>
public sealed record BoothSnapshot(
    DateTimeOffset Time,
    bool ClockProven,
    ImmutableDictionary<Quantity, Reading> Readings)
{
    /// <summary>What further sensors say of a quantity that <see cref="Readings"/> takes from another one: to see whether they still answer.</summary>
    public ImmutableArray<Reading> Others { get; init; } = [];

    /// <summary>True while parts are being proved, so that emulated readings may be mixed in with real ones.</summary>
    public bool IsProving { get; init; }

    /// <summary>The reading of <paramref name="quantity"/>, missing when no sensor provides it.</summary>
    public Reading this[Quantity quantity] =>
        Readings.TryGetValue(quantity, out Reading? reading) ? reading : Reading.Missing(quantity);
}
