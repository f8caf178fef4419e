namespace BoothWatch.Outlook;

/// <summary>The band of the blush margin at one time ahead.</summary>
/// <param name="Step">The time ahead, in steps of <see cref="AirDay.SlotMinutes"/>.</param>
/// <param name="LowC">One path in ten lies below, °C; not a number where the film model has no answer that low.</param>
/// <param name="MiddleC">Half of the paths lie below, °C.</param>
/// <param name="HighC">Nine in ten lie below, °C.</param>
/// <param name="OnGoodSide">Share of the paths that have held from now until then where the margin holds now; that have come to hold where it does not. 0 to 1.</param>
public readonly record struct OutlookBandPoint(int Step, double LowC, double MiddleC, double HighC, double OnGoodSide);
