using System.Globalization;
using BoothWatch.Outlook;

namespace BoothWatch.Service.Outlook;

/// <summary>The band of the margin at one time ahead, as JSON.</summary>
/// <param name="AheadH">The time ahead, h.</param>
/// <param name="TimeOfDay">The same by the clock on the wall.</param>
/// <param name="LowC">One such day in ten has less margin, °C; null where the film model has no answer that low.</param>
/// <param name="MiddleC">Half of them have less.</param>
/// <param name="HighC">Nine in ten have less.</param>
/// <param name="Share">Share of such days on which the margin has held until then; where it does not hold now, on which it has come to hold. 0 to 1.</param>
public sealed record OutlookAnswerBand(double AheadH, string TimeOfDay, double? LowC, double? MiddleC, double? HighC, double Share)
{
    /// <summary>The band as JSON.</summary>
    /// <param name="point">The band.</param>
    /// <param name="timeOfDay">Its time by the clock on the wall.</param>
    public static OutlookAnswerBand Of(OutlookBandPoint point, TimeSpan timeOfDay) => new(
        Math.Round(point.Step * AirDay.SlotMinutes / 60.0, 3),
        timeOfDay.ToString(@"hh\:mm", CultureInfo.InvariantCulture),
        Known(point.LowC), Known(point.MiddleC), Known(point.HighC), Math.Round(point.OnGoodSide, 3));

    private static double? Known(double value) => double.IsFinite(value) ? Math.Round(value, 2) : null;
}
