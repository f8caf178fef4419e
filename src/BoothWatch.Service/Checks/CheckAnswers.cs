using System.Globalization;
using BoothWatch.Checks;
using BoothWatch.Readings;
using BoothWatch.Service.Coat;
using BoothWatch.Service.Sensors;
using BoothWatch.Verdicts;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Checks;

/// <summary>Puts the checks into what the page shows.</summary>
internal sealed class CheckAnswers(
    CheckBook book, PairDifferences differences, CheckLimits limits, IEnumerable<ISensor> sensors, IOptions<ChecksOptions> options, IOptions<BoothOptions> booth, TimeProvider time)
{
    private const double UsualC = 25;
    private const int MostPast = 50;

    private TemperatureText Text => new(booth.Value.Unit);

    /// <summary>How it stands now.</summary>
    public ChecksAnswer Now() => new(
        sensors.Any(sensor => sensor.IsEmulated),
        options.Value.IntervalMonths,
        $"at least {Words(limits.Jar.AtLeast)}, of which the last {Words(limits.Jar.Over)} steady within {limits.Jar.HumidityPct.ToString("0.0", CultureInfo.InvariantCulture)} %",
        book.Trouble,
        [.. SaltPoint.All.Select(salt => new ChecksSalt(salt.Id, salt.Name, salt.Formula, Math.Round(salt.HumidityPct(UsualC), 1)))],
        [.. book.Sensors.Select(Of)]);

    /// <summary>A word when a real sensor is to be checked or could not be told to be good; null when not, or where it measures no humidity.</summary>
    public string? Reminder(string sensor)
    {
        ISensor? real = book.Sensors.FirstOrDefault(known => known.Name == sensor && !known.IsEmulated);
        return real is null || Of(real) is not { Running: null } known ? null
            : known.IsDue || known.Outcome == CheckOutcome.CannotTell ? $"check due ({char.ToLowerInvariant(known.Headline[0])}{known.Headline[1..]})"
            : differences.Of(sensor) is not null ? "check due (it grows apart from the other sensor)"
            : null;
    }

    private ChecksSensor Of(ISensor sensor) => book.Look(sensor.Name, (history, running, now) => Of(sensor, history, running, now));

    private ChecksSensor Of(ISensor sensor, CheckHistory history, RunningCheck? running, TimeSpan now)
    {
        IReadOnlyList<DatedResult> results = history.Results;
        IReadOnlyList<DatedResult> last = CheckWords.Latest(results);
        SensorDrift? drift = SensorDrift.Of(results);
        DateTimeOffset? due = last.Count == 0 ? null : NextCheck.After(last[^1], drift, options.Value.IntervalMonths);
        bool failed = book.Holds.Of(sensor.Name) is { Quality: ReadingQuality.FailedCheck } || history.Failure is not null;
        bool isDue = due is null || due <= time.GetUtcNow();
        string? checkedPart = last.Count == 0 ? null : history.PartOf(last[^1]);
        string? other = checkedPart == sensor.Description ? null : checkedPart;
        CheckOutcome? worst = failed ? CheckOutcome.Outside : last.Count == 0 ? null : last.Max(dated => dated.Result.Outcome);
        return new ChecksSensor
        {
            Name = sensor.Name,
            Description = sensor.Description,
            Emulated = sensor.IsEmulated,
            State = running is not null ? "being-checked" : failed ? "failed-check" : "in-use",
            Headline = other is not null && worst == CheckOutcome.Within ? $"Checked {Day(last[^1].At)} was {other}: check this one" : Headline(worst, last, due, isDue, history.Replaced),
            Words = [.. Rest(worst, last, drift, due), .. differences.Of(sensor.Name) is { } apart ? [Capital(Text.Of(apart)) + "."] : Array.Empty<string>()],
            Outcome = worst,
            Last = [.. last.Select(Of)],
            Due = due,
            IsDue = isDue || other is not null,
            DriftPctPerYear = drift is null ? null : Math.Round(drift.PctPerYear, 2),
            Running = running is null ? null : Of(running, now),
            Past = [.. history.Checks.Where(check => check.Ended is not null).Reverse().Take(MostPast).Select(check => new ChecksPast(check.Begun, check.IsCancelled, [.. check.Results.Select(Of)]))],
        };
    }

    private string Headline(CheckOutcome? worst, IReadOnlyList<DatedResult> last, DateTimeOffset? due, bool isDue, DateTimeOffset? replaced) => worst switch
    {
        null => replaced is { } at ? $"New since {Day(at)}, not checked yet" : "No check on record",
        CheckOutcome.Outside => "Out of tolerance: replace it, or check it again",
        CheckOutcome.CannotTell => $"Checked {Day(last[^1].At)}: cannot tell, check it again",
        _ when isDue => $"Due since {Day(due!.Value)}: last checked {Day(last[^1].At)}",
        _ => $"Checked {Day(last[^1].At)}: within tolerance",
    };

    private IEnumerable<string> Rest(CheckOutcome? worst, IReadOnlyList<DatedResult> last, SensorDrift? drift, DateTimeOffset? due)
    {
        if (worst == CheckOutcome.Outside)
        {
            yield return "Its humidity is not used for the verdict. A sensor that fails its salt point is replaced, not corrected away: what made it drift goes on.";
        }
        else if (worst == CheckOutcome.CannotTell)
        {
            yield return "The tolerance lies within the uncertainty of the check. It stays in use; a jar at a steadier temperature, or more time in it, tells more.";
        }

        if (CheckWords.Both(last) is { } both)
        {
            yield return Capital(CheckWords.Of(both)) + ".";
        }

        if (drift is not null)
        {
            yield return Capital(CheckWords.Of(drift)) + ".";
        }

        if (due is { } next && worst != CheckOutcome.Outside)
        {
            yield return $"Next check by {Day(next)}, and at once after it has been in solvent vapour or overspray.";
        }
    }

    private ChecksRunning Of(RunningCheck check, TimeSpan now)
    {
        SettlingState? state = check.StateAt(now);
        double? temperatureC = check.Latest?.Temperature.Value;
        return new ChecksRunning(
            check.Since,
            check.Stage switch { CheckStage.Begun => "begun", CheckStage.InJar => "in-jar", _ => "returning" },
            check.Salt?.Id,
            check.HasResult,
            check.ResultCount,
            check.Latest?.Humidity.Value is { } read ? Math.Round(read, 1) : null,
            temperatureC is { } c ? Text.Of(c) : "",
            check is { Stage: CheckStage.InJar, Salt: { } salt } && temperatureC is >= SaltPoint.LowestC and <= SaltPoint.HighestC ? Math.Round(salt.HumidityPct(temperatureC.Value), 1) : null,
            state is { IsSettled: true } && !check.ReadsAsInJar && check.Trouble is null,
            check.Trouble?.TrimEnd('.') ?? (state?.NotYet is { } why ? Text.Of(why) : null),
            check.ReadsAsInJar,
            check.SpareMayStandIn);
    }

    private static ChecksResult Of(DatedResult dated)
    {
        CheckResult result = dated.Result;
        return new ChecksResult(
            dated.At, result.Salt, Math.Round(result.ReadPct, 2), Math.Round(result.ReferencePct, 2), Math.Round(result.DeviationPct, 2),
            Math.Round(result.ExpandedUncertaintyPct, 2), Math.Round(result.TolerancePct, 2), result.Outcome, CheckWords.Finding(result));
    }

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];

    private static string Words(TimeSpan span) => span.TotalMinutes >= 90
        ? string.Create(CultureInfo.InvariantCulture, $"{span.TotalHours:0.#} h")
        : string.Create(CultureInfo.InvariantCulture, $"{span.TotalMinutes:0.##} min");

    private string Day(DateTimeOffset at) => TimeZoneInfo.ConvertTime(at, time.LocalTimeZone).ToString("d MMM yyyy", CultureInfo.InvariantCulture);
}
