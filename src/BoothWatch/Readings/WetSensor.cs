namespace BoothWatch.Readings;

/// <summary>Remembers whether a humidity sensor has been near its own dew point for long enough to be wet.</summary>
internal sealed class WetSensor(QualityLimits limits)
{
    private TimeSpan? _dampSince;
    private TimeSpan? _dryingSince;

    /// <summary>True from <see cref="QualityLimits.CondensingAfter"/> of damp until <see cref="QualityLimits.DryAfter"/> of dry.</summary>
    public bool IsWet { get; private set; }

    /// <summary>Takes a value, in %, that the sensor gave at a time.</summary>
    public void Take(double valuePct, TimeSpan at)
    {
        if (limits.CondensingFromPct is not double limitPct || double.IsNaN(valuePct))
        {
            return;
        }

        if (valuePct >= limitPct)
        {
            _dryingSince = null;
            _dampSince ??= at;
            IsWet |= at - _dampSince >= limits.CondensingAfter;
        }
        else
        {
            _dampSince = null;
            _dryingSince ??= at;
            IsWet &= at - _dryingSince < limits.DryAfter;
        }
    }
}
