namespace BoothWatch.Service.Outlook;

/// <summary>A moment of the booth.</summary>
/// <param name="Utc">By the clock of the machine.</param>
/// <param name="Today">The day in the shop.</param>
/// <param name="TimeOfDay">The time of day in the shop.</param>
public sealed record OutlookTime(DateTimeOffset Utc, DateOnly Today, TimeSpan TimeOfDay);
