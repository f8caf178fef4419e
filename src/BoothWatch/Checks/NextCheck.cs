namespace BoothWatch.Checks;

/// <summary>When a sensor is to be checked again.</summary>
public static class NextCheck
{
    /// <summary>However fast it drifts, not sooner than this. Own choice.</summary>
    public static readonly TimeSpan Soonest = TimeSpan.FromDays(30);


    /// <summary>
    /// The interval after the last check; earlier where a drift that is more than its uncertainty would use up half of what is left of the
    /// tolerance before. That intervals follow the drift found is the advice of ILAC-G24 / OIML D 10 (from memory); the half is our own choice.
    /// </summary>
    /// <param name="last">The last result.</param>
    /// <param name="drift">The drift; null when not known.</param>
    /// <param name="intervalMonths">The usual interval, months.</param>
    public static DateTimeOffset After(DatedResult last, SensorDrift? drift, int intervalMonths)
    {
        ArgumentNullException.ThrowIfNull(last);
        DateTimeOffset usual = last.At.AddMonths(intervalMonths);
        if (drift is not { IsSignificant: true } || drift.Salt != last.Result.Salt)
        {
            return usual;
        }

        double towards = drift.PctPerYear > 0 ? last.Result.DeviationPct : -last.Result.DeviationPct;
        double leftPct = Math.Max(0, last.Result.TolerancePct - towards);
        double days = Math.Max(Soonest.TotalDays, leftPct / 2 / Math.Abs(drift.PctPerYear) * SensorDrift.DaysPerYear);
        return days < (usual - last.At).TotalDays ? last.At.AddDays(days) : usual;
    }
}
