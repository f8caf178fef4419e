namespace BoothWatch.Outlook;

/// <summary>How the outlook fared at one horizon on the shop's own record, against "as it is now".</summary>
/// <param name="Step">The horizon, in steps of <see cref="AirDay.SlotMinutes"/>.</param>
/// <param name="Crps">Mean score of the margin, °C; less is better.</param>
/// <param name="CrpsAsNow">The same of "as it is now" with a band of the same changes.</param>
/// <param name="Margin">The difference of the two by day.</param>
/// <param name="Brier">Mean squared error of the chance that the margin crosses the wanted one by then, 0 to 1; less is better.</param>
/// <param name="BrierAsNow">The same of "as it is now".</param>
/// <param name="Crossing">The difference of the two by day.</param>
public sealed record HorizonScore(int Step, double Crps, double CrpsAsNow, PairedDifference Margin, double Brier, double BrierAsNow, PairedDifference Crossing)
{
    /// <summary>Days that must have been forecast before anything counts as a win.</summary>
    public const int LeastDays = 10;

    /// <summary>It must be better by this share: less is of no use to anybody, and of two equal forecasts one wins by rounding. Own choice.</summary>
    public const double LeastGain = 0.02;

    /// <summary>The horizon.</summary>
    public TimeSpan Horizon => TimeSpan.FromMinutes(Step * AirDay.SlotMinutes);

    /// <summary>
    /// True when the outlook may speak at this horizon: its margin wins by a useful share and beyond chance, and its chances of crossing over are not the
    /// worse ones.
    /// </summary>
    public bool Wins => Margin.Count >= LeastDays && Crps <= (1 - LeastGain) * CrpsAsNow && Margin.Wins && Crossing.Mean <= 1e-12;
}
