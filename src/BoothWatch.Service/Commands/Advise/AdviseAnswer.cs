using BoothWatch.Verdicts;

namespace BoothWatch.Service.Commands.Advise;

/// <summary>One question and what the booth's own rules say of it.</summary>
/// <param name="Request">The question with every value filled in.</param>
/// <param name="Substrate">What the film lies on, for people.</param>
/// <param name="Air">The air.</param>
/// <param name="Film">What the model says; null when it has no answer, which is in the reasons.</param>
/// <param name="Verdict">The verdict, without any dwell.</param>
/// <param name="Reasons">Why, most limiting first.</param>
internal sealed record AdviseAnswer(
    AdviseRequest Request,
    string Substrate,
    AirFindings Air,
    FilmFindings? Film,
    Verdict Verdict,
    IReadOnlyList<Reason> Reasons)
{
    /// <summary>What a booth measures and <c>advise</c> cannot.</summary>
    public static IReadOnlyList<string> NotMeasured { get; } = ["exhaust", "sensor quality", "clock"];
}
