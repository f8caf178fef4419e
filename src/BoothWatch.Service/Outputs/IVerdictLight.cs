using BoothWatch.Verdicts;

namespace BoothWatch.Service.Outputs;

/// <summary>The booth light, as the assessment loop and the watchdog see it. It returns at once and does not throw.</summary>
public interface IVerdictLight
{
    /// <summary>Shows a verdict. Safe to call from any thread.</summary>
    void Show(Verdict verdict);

    /// <summary>
    /// False once the lamps have not been looked at for too long: a write to a pin hangs, and they may show what was shown last.
    /// Only a restart of the process helps then.
    /// </summary>
    bool IsAlive { get; }
}
