namespace BoothWatch.Service.Checks;

/// <summary>The checks of the humidity sensors as JSON.</summary>
/// <param name="IsDemo">True when any sensor is emulated.</param>
/// <param name="IntervalMonths">A sensor is due so long after its last check.</param>
/// <param name="JarWords">How long the jar takes, for people.</param>
/// <param name="Trouble">Why past checks are not known; null when they are.</param>
/// <param name="Salts">The salts that can be in the jar.</param>
/// <param name="Sensors">The sensors that can be checked.</param>
public sealed record ChecksAnswer(
    bool IsDemo, int IntervalMonths, string JarWords, string? Trouble, IReadOnlyList<ChecksSalt> Salts, IReadOnlyList<ChecksSensor> Sensors);
