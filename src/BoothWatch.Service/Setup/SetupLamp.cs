using BoothWatch.Service.Outputs.Light;

namespace BoothWatch.Service.Setup;

/// <summary>An output of the booth light.</summary>
/// <param name="Id">green, yellow, red or buzzer.</param>
/// <param name="Pin">Its GPIO number.</param>
/// <param name="Shows">What it shows, for people.</param>
/// <param name="Confirmed">When a person saw it, with this pin; null when nobody did.</param>
/// <param name="Trial">When the command <c>lamps</c> drove this pin, and what failed; null when it did not.</param>
public sealed record SetupLamp(string Id, int Pin, string Shows, DateTimeOffset? Confirmed, LampTrial? Trial);
