using BoothWatch.Outlook;

namespace BoothWatch.Service.Outlook;

/// <summary>How the outlook fares on this record at one time ahead, as JSON.</summary>
/// <param name="AheadH">The time ahead, h.</param>
/// <param name="Days">Days that were forecast from the days before them.</param>
/// <param name="Crps">Mean score of the margin, °C; less is better.</param>
/// <param name="CrpsAsItIsNow">The same of "as it is now".</param>
/// <param name="Brier">Mean squared error of the chance that the margin crosses the wanted one by then; less is better.</param>
/// <param name="BrierAsItIsNow">The same of "as it is now".</param>
/// <param name="Wins">True when it may speak of this time ahead.</param>
public sealed record OutlookAnswerScore(double AheadH, int Days, double Crps, double CrpsAsItIsNow, double Brier, double BrierAsItIsNow, bool Wins)
{
    /// <summary>The score as JSON.</summary>
    public static OutlookAnswerScore Of(HorizonScore score)
    {
        ArgumentNullException.ThrowIfNull(score);
        return new(
            score.Horizon.TotalHours, score.Margin.Count, Math.Round(score.Crps, 3), Math.Round(score.CrpsAsNow, 3), Math.Round(score.Brier, 4), Math.Round(score.BrierAsNow, 4), score.Wins);
    }
}
