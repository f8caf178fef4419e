using BoothWatch.Verdicts;

namespace BoothWatch.Service.Outputs.Mqtt;

/// <summary>A verdict change as the journal gives it.</summary>
/// <param name="Id">Number in the journal; rises with every change, and begins anew with a new journal.</param>
/// <param name="Time">When, UTC.</param>
/// <param name="From">The verdict before; null at the first assessment after a start.</param>
/// <param name="To">The verdict after.</param>
/// <param name="Reasons">The first reasons, most limiting first.</param>
public sealed record VerdictChangeEntry(long Id, DateTime Time, Verdict? From, Verdict To, IReadOnlyList<VerdictChangeReason> Reasons);
