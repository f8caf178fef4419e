using BoothWatch.Outlook;
using BoothWatch.Service.Page;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Outlook;

/// <summary>Why there can be no outlook now, whatever the margin: nobody knows the air, or the verdict waits for something that the earlier days say nothing of.</summary>
/// <param name="Silence">The silence that follows.</param>
/// <param name="Cause">What the verdict waits for, for people; null where the air is not known.</param>
internal sealed record OutlookBarrier(OutlookSilence Silence, string? Cause)
{
    // A fan that is off in the morning or a piece that is not measured yet is put right within minutes, and the margin has an answer of its own.
    private static readonly string[] Rules = ["parts-not-proved", "clock-unproven", "too-cold", "too-hot", "film-does-not-set"];

    /// <summary>What stands in the way now; null where nothing does.</summary>
    /// <param name="current">The booth now.</param>
    /// <param name="policy">The limits that hold now.</param>
    public static OutlookBarrier? Of(CurrentState current, VerdictPolicy policy)
    {
        if (current is not { IsStale: false, Assessment: { Air: { } air } assessment })
        {
            return new OutlookBarrier(OutlookSilence.AirUnknown, null);
        }

        if (assessment.Reasons.FirstOrDefault(reason => reason.Limit == Verdict.Wait && Rules.Contains(reason.Rule)) is { } reason)
        {
            return new OutlookBarrier(OutlookSilence.VerdictWaits, reason.Finding);
        }

        // The outlook is for a piece as warm as the air, and such a piece would be stopped by its dew point.
        double clearanceC = air.TemperatureC - air.DewPointC;
        TemperatureText text = new(policy.TemperatureUnit);
        return clearanceC >= policy.DewClearanceC ? null
            : new OutlookBarrier(OutlookSilence.VerdictWaits, $"air {text.Of(air.TemperatureC)}, {text.By(clearanceC)} over the dew point");
    }
}
