namespace BoothWatch.Service.Checks;

/// <summary>One entry of the journal about a check; entries are only ever added.</summary>
/// <param name="Id">Number of the entry.</param>
/// <param name="CheckId">Number of the check.</param>
/// <param name="Sensor">Configured name of the sensor.</param>
/// <param name="At">When, UTC.</param>
/// <param name="Step">What happened.</param>
/// <param name="Fields">What belongs to it.</param>
internal sealed record CheckEntry(long Id, long CheckId, string Sensor, DateTimeOffset At, CheckStep Step, CheckFields Fields);
