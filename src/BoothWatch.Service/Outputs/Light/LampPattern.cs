namespace BoothWatch.Service.Outputs.Light;

/// <summary>How one lamp shows a verdict: on, then off, and again.</summary>
/// <param name="Lamp">The lamp.</param>
/// <param name="On">Time on, from the start of the pattern.</param>
/// <param name="Off">Time off after it; zero for a steady light.</param>
public readonly record struct LampPattern(Lamp Lamp, TimeSpan On, TimeSpan Off)
{
    /// <summary>True while the lamp is on, <paramref name="elapsed"/> after the start of the pattern.</summary>
    public bool IsOn(TimeSpan elapsed) => Off == TimeSpan.Zero || elapsed.Ticks % (On + Off).Ticks < On.Ticks;
}
