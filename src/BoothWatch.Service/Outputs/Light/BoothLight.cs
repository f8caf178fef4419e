using BoothWatch.Verdicts;

namespace BoothWatch.Service.Outputs.Light;

/// <summary>
/// The booth light. It shows wait from the start, on stop, while a pin fails, and when the loop has given no verdict for too long:
/// that last watch sits here, closest to the lamps, where a hanging loop cannot take it along.
/// </summary>
/// <remarks>
/// <see cref="Show"/> only leaves a note; the pins are written by a timer, so that a slow pin never delays the loop.
/// What the lamps do when the process is killed is up to the wiring: see docs/verdict.md.
/// </remarks>
public sealed partial class BoothLight : IVerdictLight, IDisposable
{
    private readonly Lock _stepping = new();
    private readonly LampPins _pins;
    private readonly LightOptions _options;
    private readonly TimeProvider _time;
    private readonly ILogger<BoothLight> _logger;
    private readonly ITimer _timer;

    private Note _note;
    private LightHealth _health = new(Verdict.Wait, false, false, 0, null, null);
    private long _patternStart;
    private (long Start, BeepPattern Beeps)? _beeping;
    private long? _faultAt;
    private long _triedAt;
    private long _steppedAt;
    private bool _stopped;

    /// <summary>Opens the pins and shows wait.</summary>
    internal BoothLight(LampPins pins, LightOptions options, TimeProvider time, ILogger<BoothLight> logger)
    {
        (_pins, _options, _time, _logger) = (pins, options, time, logger);
        _patternStart = time.GetTimestamp();
        _note = new Note(Verdict.Wait, _patternStart);
        Step();
        _timer = time.CreateTimer(_ => Step(), null, LightPatterns.Step, LightPatterns.Step);
    }

    /// <summary>How the light is now.</summary>
    public LightHealth Health => Volatile.Read(ref _health);

    /// <inheritdoc />
    public bool IsAlive => _time.GetElapsedTime(Interlocked.Read(ref _steppedAt)) <= LightPatterns.LongestStep;

    /// <inheritdoc />
    public void Show(Verdict verdict) =>
        Volatile.Write(ref _note, new Note(Enum.IsDefined(verdict) ? verdict : Verdict.Wait, _time.GetTimestamp()));

    /// <summary>Shows wait and leaves the pins so; a later <see cref="Show"/> has no effect.</summary>
    public void Dispose()
    {
        _timer.Dispose();
        lock (_stepping)
        {
            if (!_stopped)
            {
                _stopped = true;
                _beeping = null;
                _health = _health with { Shown = Verdict.Wait };
                IReadOnlyList<string> faults = _pins.Write(LampsNow(_time.GetTimestamp()), retryFailed: true);
                if (faults.Count == 0)
                {
                    LogStopped();
                }
                else
                {
                    LogFault(string.Join("; ", faults));
                }
            }
        }
    }

    private void Step()
    {
        // A step that is still busy with a slow pin is not joined by the next one.
        if (!_stepping.TryEnter())
        {
            return;
        }

        try
        {
            if (!_stopped)
            {
                Step(_time.GetTimestamp());
                Interlocked.Exchange(ref _steppedAt, _time.GetTimestamp());
            }
        }
        finally
        {
            _stepping.Exit();
        }
    }

    private void Step(long now)
    {
        Note note = Volatile.Read(ref _note);
        TimeSpan silence = _time.GetElapsedTime(note.Time, now);
        bool silent = silence > TimeSpan.FromSeconds(_options.WaitIfSilentForS);
        if (silent && !_health.LoopSilent)
        {
            LogLoopSilent(silence.TotalSeconds);
        }

        Turn(silent || _faultAt is not null ? Verdict.Wait : note.Verdict, now);
        _health = _health with { LoopSilent = silent };

        bool retry = _faultAt is null || _time.GetElapsedTime(_triedAt, now) >= LightPatterns.FaultRetry;
        _triedAt = retry ? now : _triedAt;
        IReadOnlyList<string> faults = _pins.Write(LampsNow(now), retry);
        if (faults.Count > 0)
        {
            Fail(faults, now);
        }
        else if (_faultAt is { } faultAt && _time.GetElapsedTime(faultAt, now) >= LightPatterns.FaultHold)
        {
            _faultAt = null;
            _health = _health with { Faulty = false };
            LogRecovered();
        }
    }

    private void Turn(Verdict verdict, long now)
    {
        if (verdict == _health.Shown)
        {
            return;
        }

        _beeping = verdict < _health.Shown && !_options.BuzzerSilent ? (now, LightPatterns.BeepFor(verdict)) : null;
        _patternStart = now;
        _health = _health with { Shown = verdict };
    }

    private void Fail(IReadOnlyList<string> faults, long now)
    {
        string what = string.Join("; ", faults);
        if (_faultAt is null)
        {
            LogFault(what);
        }

        _faultAt = now;
        Turn(Verdict.Wait, now);
        _health = _health with
        {
            Faulty = true,
            FaultCount = _health.FaultCount + faults.Count,
            LastFault = what,
            LastFaultTime = _time.GetUtcNow(),
        };
        _pins.Write(LampsNow(now), retryFailed: false);
    }

    private HashSet<Lamp> LampsNow(long now)
    {
        LampPattern pattern = LightPatterns.Of(_health.Shown);
        HashSet<Lamp> on = [];
        if (pattern.IsOn(_time.GetElapsedTime(_patternStart, now)))
        {
            on.Add(pattern.Lamp);
        }

        if (_beeping is { } beeping && beeping.Beeps.IsOn(_time.GetElapsedTime(beeping.Start, now)))
        {
            on.Add(Lamp.Buzzer);
        }

        return on;
    }

    [LoggerMessage(1, LogLevel.Error, "The light has failed and shows wait where it can: {What}")]
    private partial void LogFault(string what);

    [LoggerMessage(2, LogLevel.Information, "The light works again")]
    private partial void LogRecovered();

    [LoggerMessage(3, LogLevel.Error, "The loop has given no verdict for {Seconds:0.0} s; the light shows wait")]
    private partial void LogLoopSilent(double seconds);

    [LoggerMessage(4, LogLevel.Information, "The light shows wait: BoothWatch stops")]
    private partial void LogStopped();

    private sealed record Note(Verdict Verdict, long Time);
}
