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

    /// <summary>Air that has changed by so much asks for another outlook, °C. Own choice: the band of a few minutes.</summary>
    private const double AnotherTemperatureC = 1;

    /// <summary>The same of the dew point, °C.</summary>
    private const double AnotherDewPointC = 0.5;

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
    private OutlookAir? _madeFor;
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

    /// <summary>The latest outlook; silent as soon as something stands in its way, however lately it was made.</summary>
    public OutlookState State => _state is { Outlook.Silence: not (OutlookSilence.NotYet or OutlookSilence.SwitchedOff or OutlookSilence.DayOver) } made && Barrier is { } barrier
        ? Barred(made, barrier)
        : _state;

    /// <summary>True when the air is no longer that of the latest outlook, or what stood in its way is gone.</summary>
    internal bool IsOvertaken => Barrier is null && _feed.Current.Assessment?.Air is { } air
        && (_madeFor is not { } then || Math.Abs(air.TemperatureC - then.TemperatureC) >= AnotherTemperatureC || Math.Abs(air.DewPointC - then.DewPointC) >= AnotherDewPointC);

    private OutlookBarrier? Barrier => OutlookBarrier.Of(_feed.Current, _policy.Current);

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
            long made = _time.GetTimestamp();
            do
            {
                await Task.Delay(Soonest, _time, stoppingToken);
            }
            while (_time.GetElapsedTime(made) < every && !IsOvertaken);
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
        catch (Exception trouble) when (trouble is not OperationCanceledException)
        {
            // What is not known is not said; the verdict does not depend on it, and no fault here may put out the light.
            if (_state.Trouble is null)
            {
                LogTrouble(trouble.Message);
            }

            next = next with { Outlook = DayOutlook.SilentFor(trouble is JournalException or IOException ? OutlookSilence.NoRecord : OutlookSilence.Failed), Trouble = trouble.Message };
        }

        _state = next with { TookMs = Stopwatch.GetElapsedTime(start).TotalMilliseconds };
    }

    private OutlookState Make(OutlookState next, OutlookTime now, CancellationToken cancellationToken)
    {
        CurrentState current = _feed.Current;
        VerdictPolicy policy = _policy.Current;
        _madeFor = null;
        if (OutlookBarrier.Of(current, policy) is { } barrier)
        {
            return Barred(next, barrier);
        }

        Assessment assessment = current.Assessment!;
        AirFindings air = assessment.Air!;
        _madeFor = new OutlookAir(air.TemperatureC, air.DewPointC);

        // A compressed day holds no steps of the fan that a room could be learned from.
        if (!_clock.IsScripted)
        {
            _learner.ReadOneDay(DateOnly.FromDateTime(now.Utc.UtcDateTime), cancellationToken);
        }

        (AirStep? step, IReadOnlyList<OutlookAir> start) = BoothHeading.Of(assessment, _room.Read(now.Utc - (Hour / _clock.Speed), now.Utc, _clock.Speed), _learner.Model);
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

    private static OutlookState Barred(OutlookState state, OutlookBarrier barrier) =>
        state with { Outlook = DayOutlook.SilentFor(barrier.Silence), Barrier = barrier.Cause, WithMore = null, Step = null };

    [LoggerMessage(331, LogLevel.Warning, "There is no outlook now: {Problem}")]
    private partial void LogTrouble(string problem);
}
