namespace BoothWatch.Service.Checks;

/// <summary>A check that runs.</summary>
/// <param name="Since">When it was begun, UTC.</param>
/// <param name="Stage"><c>begun</c>, <c>in-jar</c> or <c>returning</c>.</param>
/// <param name="Salt">Id of the salt of the last jar; null before the first.</param>
/// <param name="HasResult">True when a result was taken in this jar.</param>
/// <param name="Results">How many results this check has, over all its jars.</param>
/// <param name="ReadPct">What the sensor reads, %; null without a reading.</param>
/// <param name="ReadTemperature">Its temperature, with unit; empty without a reading.</param>
/// <param name="ReferencePct">What the air over the salt has at that temperature, %; null where there is none.</param>
/// <param name="Settled">True when it counts as settled.</param>
/// <param name="NotYet">Why not; null when it does.</param>
/// <param name="ReadsAsInJar">True when it is said to be back and still reads what the jar gives.</param>
/// <param name="SpareCarriesOn">True when a second sensor stands in meanwhile.</param>
public sealed record ChecksRunning(
    DateTimeOffset Since,
    string Stage,
    string? Salt,
    bool HasResult,
    int Results,
    double? ReadPct,
    string ReadTemperature,
    double? ReferencePct,
    bool Settled,
    string? NotYet,
    bool ReadsAsInJar,
    bool SpareCarriesOn);
