using BoothWatch.Verdicts;

namespace BoothWatch.Service.Outputs.Light;

/// <summary>How the light is, for the page and for people who look for a fault.</summary>
/// <param name="Shown">The verdict that the lamps show.</param>
/// <param name="LoopSilent">True while the light waits by itself because the loop has given no verdict for too long.</param>
/// <param name="Faulty">True while the light waits because a pin has failed.</param>
/// <param name="FaultCount">Number of failed tries to write a pin since the start.</param>
/// <param name="LastFault">What failed last, for people; null when nothing has.</param>
/// <param name="LastFaultTime">When it failed, UTC; null when nothing has.</param>
public sealed record LightHealth(
    Verdict Shown, bool LoopSilent, bool Faulty, int FaultCount, string? LastFault, DateTimeOffset? LastFaultTime);
