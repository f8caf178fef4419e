using BoothWatch.Verdicts;

namespace BoothWatch.Service.Outputs.Light;

/// <summary>
/// What the light shows for each verdict, and its times. Each verdict has its own colour and its own rhythm, so that it reads
/// without colour: green winks, yellow blinks, red is steady. Times are multiples of <see cref="Step"/>.
/// </summary>
public static class LightPatterns
{
    /// <summary>How often the pins are looked at. A wink of 0.2 s is four steps.</summary>
    public static readonly TimeSpan Step = TimeSpan.FromMilliseconds(50);

    /// <summary>How long the light stays at wait after a pin has failed, before it shows a better verdict again.</summary>
    public static readonly TimeSpan FaultHold = TimeSpan.FromSeconds(5);

    /// <summary>Longest time without a completed step: beyond it, a write to a pin hangs. Far above a slow pin, far below the watchdog of systemd.</summary>
    public static readonly TimeSpan LongestStep = TimeSpan.FromSeconds(2);

    /// <summary>How long until a pin that failed is tried again.</summary>
    public static readonly TimeSpan FaultRetry = TimeSpan.FromSeconds(1);

    /// <summary>
    /// The lamp of a verdict. Green with a short wink every 2 s: a green that no longer winks is a dead program, not a good booth.
    /// Its edges also keep the one-shot of 5 s in the green line on (hardware/README.md), so a period must stay well below that.
    /// Yellow half on, half off. Red steady: it needs no running program to stay right. Anything else than a known verdict is wait.
    /// </summary>
    public static LampPattern Of(Verdict verdict) => verdict switch
    {
        Verdict.Spray => new(Lamp.Green, TimeSpan.FromSeconds(1.8), TimeSpan.FromSeconds(0.2)),
        Verdict.SlowDown => new(Lamp.Yellow, TimeSpan.FromSeconds(0.5), TimeSpan.FromSeconds(0.5)),
        _ => new(Lamp.Red, TimeSpan.FromSeconds(1), TimeSpan.Zero),
    };

    /// <summary>The beeps when the verdict has become worse: one to slow down, three to wait.</summary>
    public static BeepPattern BeepFor(Verdict verdict) => verdict switch
    {
        Verdict.SlowDown => new(1, TimeSpan.FromSeconds(0.2), TimeSpan.FromSeconds(0.2)),
        _ => new(3, TimeSpan.FromSeconds(0.2), TimeSpan.FromSeconds(0.2)),
    };
}
