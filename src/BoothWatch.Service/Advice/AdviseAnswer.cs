using BoothWatch.Verdicts;

namespace BoothWatch.Service.Advice;

/// <summary>One question and what the booth's own rules say of it, without any dwell.</summary>
/// <param name="Request">The question with every value filled in.</param>
/// <param name="Substrate">What the film lies on, for people.</param>
/// <param name="ThicknessMm">Thickness of the piece, mm.</param>
/// <param name="Assessment">Air, film, verdict and reasons. The film is null when the model has no answer, which is then a reason.</param>
/// <param name="RequiredMarginC">Required margin that it was judged with, °C.</param>
internal sealed record AdviseAnswer(AdviseRequest Request, string Substrate, double ThicknessMm, Assessment Assessment, double RequiredMarginC)
{
    /// <summary>The line that stands below every answer.</summary>
    public const string Caution =
        "This is advice about the finish only. It does not say that the air is safe to breathe or cannot ignite: keep the exhaust "
        + "running, keep ignition sources away, wear the respirator that the lacquer's data sheet asks for, and follow the local fire and electrical code.";

    /// <summary>What a booth measures and <c>advise</c> cannot.</summary>
    public static IReadOnlyList<string> NotMeasured { get; } = ["exhaust", "sensor quality", "clock"];

    /// <summary>The air; always known here.</summary>
    public AirFindings Air => Assessment.Air!;

    /// <summary>What the model says; null when it has no answer.</summary>
    public FilmFindings? Film => Assessment.Film;

    /// <summary>Whether the piece is warm enough, and else when, by the model.</summary>
    public PieceWarming Warming => Assessment.Warming!;

    /// <summary>The verdict.</summary>
    public Verdict Verdict => Assessment.Verdict;

    /// <summary>Why, most limiting first.</summary>
    public IReadOnlyList<Reason> Reasons => Assessment.Reasons;
}
