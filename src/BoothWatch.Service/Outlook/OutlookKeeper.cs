using System.Diagnostics;
using System.Globalization;
using BoothWatch.Air;
using BoothWatch.Film;
using BoothWatch.Outlook;
using BoothWatch.Service.Assessing;
using BoothWatch.Service.Coat;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Page;
using BoothWatch.Service.Sensors.Emulation;
using BoothWatch.Verdicts;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Outlook;

/// <summary>
/// Makes the outlook anew every few minutes, on a thread of its own that nobody waits for: it reads the journal over a connection of its own, and
/// asks a film model of its own, so that neither the loop nor the light ever stands behind it.
/// </summary>
public sealed partial class OutlookKeeper : BackgroundService
{
    /// <summary>The first verdict, and the past of the demo, come first.</summary>
    public static readonly TimeSpan After = TimeSpan.FromSeconds(8);

    /// <summary>A compressed day would ask for it all the time.</summary>
    public static readonly TimeSpan Soonest = TimeSpan.FromSeconds(5);

    private static readonly TimeSpan Hour = TimeSpan.FromHours(1);

    /// <summary>Uncertainty of the margin while no piece is measured, °C. Assumed, as of the usual parts.</summary>
    private const double AssumedUncertaintyC = 1;

    private readonly PageFeed _feed;
    private readonly PolicyInForce _policy;
    private readonly CoatPlan _plan;
    private readonly OutlookClock _clock;
    private readonly OutlookOptions _options;
    private readonly TimeProvider _time;
    private readonly ILogger<OutlookKeeper> _logger;
    private readonly IOutlookRecord _record;
    private readonly CoatCriticalDewPoints _critical;
    private readonly CoatCriticalDewPoints _criticalOfMore;
    private readonly RoomQuery _room;
    private readonly RoomLearner _learner;
    private double _uncertaintyC = AssumedUncertaintyC;
    private volatile OutlookState _state = new();

    /// <summary>Takes what it needs; nothing is read yet.</summary>
    public OutlookKeeper(
        PageFeed feed,
        PolicyInForce policy,
        CoatPlan plan,
        OutlookClock clock,
        JournalLocation location,
        IOptions<BoothOptions> booth,
        IOptions<OutlookOptions> options,
        IOptions<DemoOptions> demo,
        TimeProvider time,
        ILogger<OutlookKeeper> logger)
    {
        ArgumentNullException.ThrowIfNull(clock);
        ArgumentNullException.ThrowIfNull(booth);
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(demo);
        ArgumentNullException.ThrowIfNull(time);
        (_feed, _policy, _plan, _clock, _options, _time, _logger) = (feed, policy, plan, clock, options.Value, time, logger);
        _record = clock.IsScripted && _options.DemoPast ? new ScriptedRecord(demo.Value.Seed) : new JournalRecord(location, time.LocalTimeZone);
        _room = new RoomQuery(location, StationPressure.AtAltitude(booth.Value.AltitudeM));
        _learner = new RoomLearner(_room);
        (_critical, _criticalOfMore) = (new CoatCriticalDewPoints(plan), new CoatCriticalDewPoints(plan));
    }

    /// <summary>The latest outlook.</summary>
    public OutlookState State => _state;

    private TimeSpan DayEnds
    {
        get
        {
            TimeSpan end = TimeSpan.ParseExact(_options.DayEndsAt, OutlookOptionsValidator.TimeFormat, CultureInfo.InvariantCulture);
            return _clock.IsScripted && end > ShopClock.Closing ? ShopClock.Closing : end;
        }
    }

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        if (!_options.Enabled)
        {
            _state = new OutlookState { Outlook = DayOutlook.SilentFor(OutlookSilence.SwitchedOff) };
            return;
        }

        await Task.Delay(After, _time, stoppingToken);
        TimeSpan every = TimeSpan.FromMinutes(_options.EveryMinutes) / _clock.Speed;
        while (true)
        {
            await Task.Factory.StartNew(() => Renew(stoppingToken), stoppingToken, TaskCreationOptions.LongRunning, TaskScheduler.Default);
            await Task.Delay(every > Soonest ? every : Soonest, _time, stoppingToken);
        }
    }

    /// <summary>Makes the outlook from what is known now.</summary>
    internal void Renew(CancellationToken cancellationToken)
    {
        long start = Stopwatch.GetTimestamp();
        OutlookTime now = _clock.Now;
        OutlookState next = new() { At = now, IsInvented = _record.IsInvented };
        try
        {
            next = Make(next, now, cancellationToken);
        }
        catch (Exception trouble) when (trouble is JournalException or DryingFailedException or ArgumentException or InvalidOperationException or ArithmeticException or IOException)
        {
            // What is not known is not said; the verdict does not depend on it.
            if (_state.Trouble is null)
            {
                LogTrouble(trouble.Message);
            }

            next = next with { Outlook = DayOutlook.SilentFor(OutlookSilence.NoRecord), Trouble = trouble.Message };
        }

        _state = next with { TookMs = Stopwatch.GetElapsedTime(start).TotalMilliseconds };
    }

    private OutlookState Make(OutlookState next, OutlookTime now, CancellationToken cancellationToken)
    {
        CurrentState current = _feed.Current;
        if (current is not { IsStale: false, Assessment: { Air: { } air } assessment })
        {
            return next with { Outlook = DayOutlook.SilentFor(OutlookSilence.AirUnknown) };
        }

        // A compressed day holds no steps of the fan that a room could be learned from.
        if (!_clock.IsScripted)
        {
            _learner.ReadOneDay(DateOnly.FromDateTime(now.Utc.UtcDateTime), cancellationToken);
        }

        (AirStep? step, IReadOnlyList<OutlookAir> start) = BoothHeading.Of(assessment, _room.Read(now.Utc - (Hour / _clock.Speed), now.Utc, _clock.Speed), _learner.Model);
        VerdictPolicy policy = _policy.Current;
        _uncertaintyC = assessment.Film?.MarginUncertaintyC ?? _uncertaintyC;
        double most = _plan.Ladder.Select(step => step.RetarderPct).Where(pct => pct <= policy.SlowDownAboveRetarderPct).DefaultIfEmpty(_plan.Ladder[0].RetarderPct).Max();
        double level = _plan.LoadedRetarderPct ?? most;
        OutlookQuestion question = new()
        {
            Past = _record.Before(now.Today, 2 * _options.WindowDays, cancellationToken),
            Today = now.Today,
            TimeOfDay = now.TimeOfDay,
            DayEnds = DayEnds,
            Start = start,
            Critical = _critical.For(level, air.PressurePa),
            WantedC = policy.RequiredMarginC + (policy.CoverageFactor * _uncertaintyC),
            Window = _options.WindowDays,
        };
        return next with
        {
            Outlook = OutlookComposer.Of(question),
            Step = step,
            Room = _learner.Model,
            RetarderPct = level,
            IsLoaded = _plan.LoadedRetarderPct is not null,
            MoreRetarderPct = most,
            WithMore = most > level ? OutlookComposer.Of(question with { Critical = _criticalOfMore.For(most, air.PressurePa) }) : null,
        };
    }

    [LoggerMessage(331, LogLevel.Warning, "There is no outlook now: {Problem}")]
    private partial void LogTrouble(string problem);
}
