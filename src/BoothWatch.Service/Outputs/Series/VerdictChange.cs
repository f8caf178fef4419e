using BoothWatch.Verdicts;

namespace BoothWatch.Service.Outputs.Series;

/// <summary>A change of the verdict, as journalled.</summary>
/// <param name="Id">Row number; rises with insertion, also when the clock steps back.</param>
/// <param name="Time">When, UTC.</param>
/// <param name="From">The verdict before; null at the first assessment after a start of the service.</param>
/// <param name="To">The verdict after.</param>
/// <param name="Reasons">The first reasons, most limiting first.</param>
public sealed record VerdictChange(long Id, DateTimeOffset Time, Verdict? From, Verdict To, IReadOnlyList<ChangeReason> Reasons);
