using BoothWatch.Checks;
using BoothWatch.Readings;

namespace BoothWatch.Service.Checks;

/// <summary>A check that runs: how far it is, and what the sensor reads. Not for use by two threads at once.</summary>
/// <param name="sensor">Configured name of the sensor.</param>
/// <param name="since">When it was begun, UTC.</param>
/// <param name="spareMayStandIn">True when a second sensor that agreed at the beginning may take its place.</param>
/// <param name="limits">When readings count as settled.</param>
/// <param name="part">What and where the part is, as its sensor described it at the beginning; null when not known.</param>
internal sealed class RunningCheck(string sensor, DateTimeOffset since, bool spareMayStandIn, CheckLimits limits, string? part = null)
{
    /// <summary>A reading that has not left the jar's by so much may still be in it, % of relative humidity. Own choice.</summary>
    public const double LeftJarPct = 3;

    private const double UsualC = 25;

    private readonly List<(SaltPoint Salt, double? ReadPct)> _jars = [];
    private Settling? _settling;

    public string Sensor => sensor;

    public DateTimeOffset Since => since;

    public bool SpareMayStandIn => spareMayStandIn;

    public string? Part => part;

    /// <summary>Its number in the journal; null while it has none.</summary>
    public long? Id { get; set; }

    public CheckStage Stage { get; private set; }

    /// <summary>The salt of the last jar; null before the first.</summary>
    public SaltPoint? Salt => HasJar ? _jars[^1].Salt : null;

    /// <summary>True when a result was taken in the last jar.</summary>
    public bool HasResult => HasJar && _jars[^1].ReadPct is not null;

    /// <summary>How many jars have given a result.</summary>
    public int ResultCount => _jars.Count(jar => jar.ReadPct is not null);

    private bool HasJar => _jars.Count > 0;

    /// <summary>True when the journal has its end, and only the file has not.</summary>
    public bool HasEnded { get; private set; }

    /// <summary>Why its end cannot be kept, so that the sensor is held on; null when it can.</summary>
    public string? Trouble { get; set; }

    /// <summary>True when somebody has said twice that it is back.</summary>
    public bool IsCertain { get; private set; }

    /// <summary>The last humidity and temperature with their uncertainties; null without a good one.</summary>
    public (Reading Humidity, Reading Temperature)? Latest { get; private set; }

    /// <summary>Takes an entry of this check.</summary>
    /// <param name="entry">The entry.</param>
    /// <param name="now">The moment by the monotonic clock: in which to settle begins anew.</param>
    public void Apply(CheckEntry entry, TimeSpan now)
    {
        Id = entry.CheckId;
        switch (entry.Step)
        {
            case CheckStep.InJar when SaltPoint.Find(entry.Fields.Salt) is { } salt:
                (Stage, IsCertain) = (CheckStage.InJar, false);
                _jars.Add((salt, null));
                _settling = new Settling(limits.Jar, now);
                break;
            case CheckStep.Result when HasJar:
                _jars[^1] = (_jars[^1].Salt, entry.Fields.Result!.ReadPct);
                break;
            case CheckStep.Back:
                Return(now, entry.Fields.Certain == true);
                break;
            case CheckStep.Ended:
                HasEnded = true;
                break;
            default:
                break;
        }
    }

    private void Return(TimeSpan now, bool certain)
    {
        if (Stage != CheckStage.Returning)
        {
            bool wasDamp = Salt is null || Salt.HumidityPct(UsualC) > CheckLimits.DampFromPct;
            _settling = new Settling(wasDamp ? limits.BackFromDamp : limits.Back, now);
        }

        // Looked again: only who was told that it reads as in the jar can have done that, and not who saw an older page.
        (Stage, IsCertain) = (CheckStage.Returning, IsCertain || (certain && Stage == CheckStage.Returning));
    }

    /// <summary>Takes what the sensor reads now.</summary>
    public void Take(Reading humidity, Reading temperature, TimeSpan now)
    {
        if (humidity.Value is not { } humidityPct || temperature.Value is not { } temperatureC)
        {
            Latest = null;
            return;
        }

        Latest = (humidity, temperature);
        TimeSpan age = humidity.Age > temperature.Age ? humidity.Age : temperature.Age;
        _settling?.Take(humidityPct, temperatureC, now - age);
    }

    /// <summary>How settled it is; null before the first jar.</summary>
    public SettlingState? StateAt(TimeSpan now) => _settling?.At(now);

    /// <summary>
    /// True when the reading, though the sensor is said to be back, is what one of the jars of this check gave or would give. Where no jar is on
    /// record it may have been any.
    /// </summary>
    public bool ReadsAsInJar => Stage == CheckStage.Returning && !IsCertain && Latest is { } latest
        && JarPoints(latest.Temperature.Value!.Value).Any(point => Math.Abs(latest.Humidity.Value!.Value - point) < LeftJarPct);

    /// <summary>True when it is back and settled there.</summary>
    public bool IsDone(TimeSpan now) => Stage == CheckStage.Returning && Latest is not null && !ReadsAsInJar && StateAt(now) is { IsSettled: true };

    private IEnumerable<double> JarPoints(double temperatureC)
    {
        double inRangeC = Math.Clamp(temperatureC, SaltPoint.LowestC, SaltPoint.HighestC);
        return !HasJar
            ? SaltPoint.All.Select(salt => salt.HumidityPct(inRangeC))
            : _jars.SelectMany(jar => new[] { jar.Salt.HumidityPct(inRangeC), jar.ReadPct ?? jar.Salt.HumidityPct(inRangeC) });
    }
}
