namespace BoothWatch.Service.Outputs.Light;

/// <summary>Some beeps, and then silence.</summary>
/// <param name="Count">Number of beeps.</param>
/// <param name="On">Length of a beep.</param>
/// <param name="Off">Silence between beeps.</param>
public readonly record struct BeepPattern(int Count, TimeSpan On, TimeSpan Off)
{
    /// <summary>True while it sounds, <paramref name="elapsed"/> after its start.</summary>
    public bool IsOn(TimeSpan elapsed) => elapsed < Count * (On + Off) && elapsed.Ticks % (On + Off).Ticks < On.Ticks;
}
