using BoothWatch.Verdicts;

namespace BoothWatch.Service.Outputs;

/// <summary>The booth light, as the assessment loop and the watchdog see it. It returns at once and does not throw.</summary>
public interface IVerdictLight
{
    /// <summary>Shows a verdict. Safe to call from any thread.</summary>
    void Show(Verdict verdict);
}
