using System.Collections.Concurrent;
using BoothWatch.Air;
using BoothWatch.Film;
using BoothWatch.Jobs;
using BoothWatch.Service.Coat;
using BoothWatch.Verdicts;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Jobs;

/// <summary>Timers and watch of a job, from its schedule and from the air since its last coat.</summary>
public sealed class JobClock(
    ScheduleBook schedules, CoatPhysics physics, CoatAirQuery journal, CoatMoments moments, VerdictPolicy policy, IOptions<BoothOptions> booth, TimeProvider time)
{
    /// <summary>The drying of a coat is reckoned anew so often: its air changes slowly, and a board has better things to do.</summary>
    private static readonly TimeSpan Afresh = TimeSpan.FromMinutes(1);

    private readonly ConcurrentDictionary<long, Reckoned> _reckoned = [];

    private sealed record Reckoned(CoatDetails Details, DateTimeOffset At, DryingDelay? Delay);

    /// <summary>What the job waits for and how its soft film fares, now.</summary>
    /// <exception cref="Outputs.Series.JournalException">The journal cannot be read.</exception>
    public JobNow Of(Job job)
    {
        ArgumentNullException.ThrowIfNull(job);
        if (!job.IsRunning || job.LastCoat is not { } coat || schedules.Of(job.Details) is not { } schedule)
        {
            return new JobNow([], null, null);
        }

        DateTimeOffset now = time.GetUtcNow();
        DryingDelay? delay = DelayOf(coat, now);
        IReadOnlyList<JobTimer> timers = JobTimers.Of(job, schedule, delay);
        return new JobNow(timers, delay, WatchOf(job, timers, now));
    }

    private SoftFilmWatch? WatchOf(Job job, IReadOnlyList<JobTimer> timers, DateTimeOffset now)
    {
        DateTimeOffset? until = timers.First(timer => timer.Kind == JobTimerKind.Hard).Due;
        if (until <= now)
        {
            return null;
        }

        Assessment? assessment = moments.Fresh;
        CoatAir before = journal.Of(now.AddMinutes(-65), now.AddMinutes(-55));
        return SoftFilmWatch.Of(
            job,
            until,
            now,
            assessment?.Air?.PieceTemperatureC,
            assessment?.Air?.DewPointC,
            before.PieceTemperatureC?.Mean - before.DewPointC?.Mean,
            policy.DewClearanceC,
            new TemperatureText(policy.TemperatureUnit));
    }

    private DryingDelay? DelayOf(JobCoat coat, DateTimeOffset now)
    {
        if (_reckoned.TryGetValue(coat.Id, out Reckoned? known) && known.Details == coat.Details && (now - known.At).Duration() < Afresh)
        {
            return known.Delay;
        }

        DryingDelay? delay = AirSince(coat.DriesFrom, now) is { } air ? Reckon(coat.Details, air.Air, air.PieceC) : null;
        if (_reckoned.Count > 100)
        {
            _reckoned.Clear();
        }

        _reckoned[coat.Id] = new Reckoned(coat.Details, now, delay);
        return delay;
    }

    private DryingDelay? Reckon(CoatDetails details, MoistAir air, double pieceC)
    {
        try
        {
            return DryingDelay.Between(physics.CaseOf(details, air, pieceC), physics.ReferenceOf(details, air.PressurePa), text: new TemperatureText(policy.TemperatureUnit));
        }
        catch (Exception unknown) when (unknown is DryingFailedException or JobRuleException or ArgumentException)
        {
            return null;
        }
    }

    // The mean air since the coat; right after it the present air.
    private (MoistAir Air, double PieceC)? AirSince(DateTimeOffset from, DateTimeOffset now)
    {
        CoatAir span = journal.Of(from, now);
        if (span is { TemperatureC: { } temperature, RelativeHumidityPct: { } humidity })
        {
            MoistAir mean = MoistAir.FromRelativeHumidity(
                temperature.Mean, Math.Clamp(humidity.Mean, 0, 100), StationPressure.AtAltitude(booth.Value.AltitudeM));
            return (mean, span.PieceTemperatureC?.Mean ?? temperature.Mean);
        }

        return moments.Fresh?.Air is { } air && now - from < TimeSpan.FromMinutes(2)
            ? (MoistAir.FromRelativeHumidity(air.TemperatureC, air.RelativeHumidityPct, air.PressurePa), air.PieceTemperatureC ?? air.TemperatureC)
            : null;
    }
}
