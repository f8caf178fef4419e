using System.Collections.Immutable;
using System.Globalization;
using BoothWatch.Outlook;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Page;

/// <summary>The latest assessment with its age. Once it is too old, the verdict is wait, whatever it was.</summary>
/// <param name="Sequence">Counts the assessments since start; 0 before the first.</param>
/// <param name="Assessment">The latest assessment; null before the first.</param>
/// <param name="Age">Time since it arrived, by the monotonic clock; time since start before the first.</param>
public sealed record CurrentState(long Sequence, Assessment? Assessment, TimeSpan Age)
{
    /// <summary>An assessment older than this is not shown as a verdict any more. Not a setting: five missed ticks are a fault.</summary>
    public static readonly TimeSpan StaleAfter = TimeSpan.FromSeconds(5);

    /// <summary>How long the margin lasts if it goes on falling; null when there is nothing to say.</summary>
    public ClosingMargin? Closing { get; init; }

    /// <summary>True when there is no assessment, or only an old one.</summary>
    public bool IsStale => Assessment is null || Age > StaleAfter;

    /// <summary>The verdict to show.</summary>
    public Verdict Verdict => IsStale ? Verdict.Wait : Assessment!.Verdict;

    /// <summary>Why; never empty.</summary>
    public ImmutableArray<Reason> Reasons => Assessment switch
    {
        null => [new Reason("no-assessment", Verdict.Wait, "no assessment yet since start", "wait; if this stays, look at the sensors below")],
        _ when IsStale => [new Reason("stale-assessment", Verdict.Wait,
            string.Create(CultureInfo.InvariantCulture, $"the last assessment is {Age.TotalSeconds:0} s old"),
            "wait; if this stays, restart BoothWatch and look at its log")],
        { } assessment => assessment.Reasons,
    };
}
