using BoothWatch.Verdicts;

namespace BoothWatch.Service.Outputs.Mqtt;

/// <summary>A verdict change as it is published. A reader knows a repetition by the same id and time.</summary>
internal sealed record VerdictChangeDocument(
    string Shop, string Booth, long Id, DateTime Time, Verdict? From, Verdict To, IReadOnlyList<VerdictChangeReason> Reasons)
{
    public static VerdictChangeDocument Of(VerdictChangeEntry change, string shop, string booth) =>
        new(shop, booth, change.Id, change.Time, change.From, change.To, change.Reasons);
}
