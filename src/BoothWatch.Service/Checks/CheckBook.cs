using System.Collections.Immutable;
using System.Globalization;
using BoothWatch.Checks;
using BoothWatch.Readings;
using BoothWatch.Service.Assessing;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Sensors;

namespace BoothWatch.Service.Checks;

/// <summary>
/// The checks of the humidity sensors: those that run and those on record. From the moment that a check is begun its sensor is held, so that
/// the air of a jar is never taken for that of the booth, until its reading has settled back in the booth. Safe for several threads.
/// </summary>
/// <remarks>
/// A hold is in memory before it is on the disk, and on the disk (file and journal) before anybody is told to go on; it leaves the journal first,
/// then the file, then memory. Whatever a crash leaves, the sensor of an unfinished check is held: what only one of the two knows, counts.
/// </remarks>
internal sealed partial class CheckBook
{
    private static readonly TimeSpan AskAgainAfter = TimeSpan.FromSeconds(10);

    private readonly Lock _one = new();
    private readonly CheckStore _store;
    private readonly HoldFile _file;
    private readonly CheckLimits _limits;
    private readonly TimeProvider _time;
    private readonly ILogger<CheckBook> _logger;
    private readonly ImmutableArray<ISensor> _sensors;
    private readonly Dictionary<string, RunningCheck> _running = [];
    private readonly List<CheckEntry> _entries = [];
    private readonly long _start;
    private ImmutableDictionary<string, HoldLine> _failed = ImmutableDictionary<string, HoldLine>.Empty;
    private long? _troubleSince;
    private bool _clockProven;

    /// <summary>Takes up what ran before, so that the first reading is held already.</summary>
    public CheckBook(CheckStore store, HoldFile file, IEnumerable<ISensor> sensors, CheckLimits limits, TimeProvider time, ILogger<CheckBook> logger)
    {
        (_store, _file, _limits, _time, _logger) = (store, file, limits, time, logger);
        _sensors = [.. sensors.Where(sensor => sensor.Quantities.Any(IsHumidity))];
        _start = time.GetTimestamp();
        TakeUp(file.Read());
        TakeOver(file.OfDemo);
        FollowParts();
        PutHolds();
    }

    /// <summary>The holds that follow.</summary>
    public SensorHolds Holds { get; } = new();

    /// <summary>The sensors that can be checked.</summary>
    public IReadOnlyList<ISensor> Sensors => _sensors;

    /// <summary>Why the journal's checks are not known; null when they are.</summary>
    public string? Trouble { get; private set; }

    private TimeSpan Elapsed => _time.GetElapsedTime(_start);

    /// <summary>Begins a check: the sensor is held from here on. When this returns, it stays so whatever happens to the program.</summary>
    /// <exception cref="CheckRefusedException">It does not fit.</exception>
    /// <exception cref="JournalException">It could not be kept; nothing was begun.</exception>
    public void Begin(string sensor, bool spareMayStandIn)
    {
        lock (_one)
        {
            ISensor known = Known(sensor);
            if (_running.ContainsKey(sensor))
            {
                throw new CheckRefusedException($"a check of {sensor} runs already");
            }

            DateTimeOffset now = _time.GetUtcNow();
            RunningCheck check = new(sensor, now, spareMayStandIn, _limits, known.Description);
            _running.Add(sensor, check);
            PutHolds();
            try
            {
                WriteFile();
                Add(check, CheckStep.Begun, new CheckFields { SpareMayStandIn = spareMayStandIn, Part = known.Description });
            }
            catch (JournalException)
            {
                // Nobody was told to go on. The file may still hold the sensor after a restart: too much, and said on the page.
                _running.Remove(sensor);
                PutHolds();
                TryWriteFile();
                throw;
            }

            LogBegun(sensor);
        }
    }

    /// <summary>The sensor is in the closed jar.</summary>
    /// <exception cref="CheckRefusedException">It does not fit.</exception>
    /// <exception cref="JournalException">It could not be kept.</exception>
    public void PutInJar(string sensor, SaltPoint salt)
    {
        lock (_one)
        {
            RunningCheck check = Running(sensor);
            Add(check, CheckStep.InJar, new CheckFields { Salt = salt.Id });
        }
    }

    /// <summary>Takes the result in the jar, once settled.</summary>
    /// <exception cref="CheckRefusedException">It is not settled, or not in a jar.</exception>
    /// <exception cref="JournalException">It could not be kept.</exception>
    public void TakeResult(string sensor)
    {
        lock (_one)
        {
            RunningCheck check = Running(sensor);
            if (check is not { Stage: CheckStage.InJar, Salt: { } salt } || check.StateAt(Elapsed) is not { } state)
            {
                throw new CheckRefusedException($"{sensor} is in no jar; close it in one first");
            }

            if (check.HasResult)
            {
                throw new CheckRefusedException($"the result over {salt.Name} is taken already");
            }

            if (!_clockProven)
            {
                throw new CheckRefusedException("the date and time of this computer are not proven, and a result needs its date; leave it in the jar until they are");
            }

            if (!state.IsSettled || check.Latest is not { } latest)
            {
                throw new CheckRefusedException($"not yet: {state.NotYet ?? "no reading"}");
            }

            if (state.TemperatureC is not (>= SaltPoint.LowestC and <= SaltPoint.HighestC))
            {
                throw new CheckRefusedException(string.Create(
                    CultureInfo.InvariantCulture, $"the jar is outside {SaltPoint.LowestC} to {SaltPoint.HighestC} °C, for which the humidity over the salt is known"));
            }

            CheckResult result = CheckResult.Of(salt, state, latest.Humidity.StandardUncertainty, latest.Temperature.StandardUncertainty, _limits.GradientC);
            Add(check, CheckStep.Result, new CheckFields { Result = result });
            FindFailed();
            TryWriteFile();
            LogResult(sensor, CheckWords.Finding(result));
        }
    }

    /// <summary>Somebody says that the sensor is back in its place. It stays held until its reading has settled there.</summary>
    /// <param name="sensor">The sensor.</param>
    /// <param name="cancelled">True when the results shall not count.</param>
    /// <param name="certain">True when somebody has looked again, because it reads as in the jar.</param>
    /// <exception cref="CheckRefusedException">It does not fit.</exception>
    /// <exception cref="JournalException">It could not be kept.</exception>
    public void SayBack(string sensor, bool cancelled, bool certain)
    {
        lock (_one)
        {
            Add(Running(sensor), CheckStep.Back, new CheckFields { Cancelled = cancelled ? true : null, Certain = certain ? true : null });
            FindFailed();
        }
    }

    /// <summary>The part was replaced by a new one: its history begins anew.</summary>
    /// <exception cref="CheckRefusedException">A check of it runs.</exception>
    /// <exception cref="JournalException">It could not be kept.</exception>
    public void Replace(string sensor)
    {
        lock (_one)
        {
            Known(sensor);
            if (_running.ContainsKey(sensor))
            {
                throw new CheckRefusedException($"a check of {sensor} runs; finish it first, or say that it is back");
            }

            _entries.Add(_store.Add(null, sensor, _time.GetUtcNow(), CheckStep.Replaced, new CheckFields()));
            _failed = _failed.Remove(sensor);
            FindFailed();
            PutHolds();
            TryWriteFile(); // what it may still say of the old part, the journal overrules
            LogReplaced(sensor);
        }
    }

    /// <summary>Takes what the sensors under check read, and frees those that have settled back in the booth.</summary>
    public void Tick(BoothSnapshot snapshot)
    {
        lock (_one)
        {
            AskTheJournalAgain();
            _clockProven = snapshot.ClockProven;
            Reading[] readings = [.. snapshot.Readings.Values, .. snapshot.Others];
            TimeSpan now = Elapsed;
            foreach (RunningCheck check in _running.Values.ToArray())
            {
                Reading[] own = [.. readings.Where(reading => reading.Sensor == check.Sensor)];
                if (own.FirstOrDefault(reading => IsHumidity(reading.Quantity)) is { } humidity && own.FirstOrDefault(reading => IsAirTemperature(reading.Quantity)) is { } temperature)
                {
                    check.Take(humidity, temperature, now);
                }

                if (check.IsDone(now))
                {
                    End(check);
                }
            }
        }
    }

    /// <summary>Asks about one sensor while nothing changes: its history, and how its running check stands.</summary>
    public T Look<T>(string sensor, Func<CheckHistory, RunningCheck?, TimeSpan, T> look)
    {
        lock (_one)
        {
            return look(HistoryOf(sensor), _running.GetValueOrDefault(sensor), Elapsed);
        }
    }

    private static bool IsHumidity(Quantity quantity) => quantity is Quantity.BoothHumidity or Quantity.IntakeHumidity;

    private static bool IsAirTemperature(Quantity quantity) => quantity is Quantity.BoothTemperature or Quantity.IntakeTemperature;

    private CheckHistory HistoryOf(string sensor) => new(_entries.Where(entry => entry.Sensor == sensor));

    private ISensor Known(string sensor) => _sensors.FirstOrDefault(known => known.Name == sensor)
        ?? throw new CheckRefusedException($"{sensor} measures no humidity, or does not exist; give one of {string.Join(", ", _sensors.Select(known => known.Name))}");

    private RunningCheck Running(string sensor) => _running.GetValueOrDefault(sensor)
        ?? throw new CheckRefusedException($"no check of {sensor} runs; begin one first, before the sensor leaves its place");

    private void Add(RunningCheck check, CheckStep step, CheckFields fields)
    {
        CheckEntry entry = _store.Add(check.Id, check.Sensor, step == CheckStep.Begun ? check.Since : _time.GetUtcNow(), step, fields);
        _entries.Add(entry);
        check.Apply(entry, Elapsed);
    }

    private void End(RunningCheck check)
    {
        try
        {
            if (!check.HasEnded)
            {
                Add(check, CheckStep.Ended, new CheckFields());
            }

            _running.Remove(check.Sensor);
            FindFailed();
            WriteFile();
            LogEnded(check.Sensor);
        }
        catch (JournalException trouble)
        {
            // Held on: tried again with the next reading.
            _running[check.Sensor] = check;
            if (check.Trouble is null)
            {
                LogTrouble(trouble.Message);
            }

            check.Trouble = trouble.Message;
        }

        PutHolds();
    }

    [LoggerMessage(341, LogLevel.Warning, "A check of {Sensor} begins: its readings are not used until it is back and has settled")]
    private partial void LogBegun(string sensor);

    [LoggerMessage(342, LogLevel.Warning, "A check of {Sensor} was begun before this start and has not ended: its readings are not used")]
    private partial void LogGoesOn(string sensor);

    [LoggerMessage(343, LogLevel.Information, "Check of {Sensor}: {Finding}")]
    private partial void LogResult(string sensor, string finding);

    [LoggerMessage(344, LogLevel.Information, "The check of {Sensor} has ended: it is back and has settled")]
    private partial void LogEnded(string sensor);

    [LoggerMessage(345, LogLevel.Information, "{Sensor} was replaced: its checks begin anew")]
    private partial void LogReplaced(string sensor);

    [LoggerMessage(346, LogLevel.Error, "{Path} cannot be read, so nobody knows which sensors are being checked: all of them are held until somebody says that they hang in the booth")]
    private partial void LogUnreadable(string path);

    [LoggerMessage(347, LogLevel.Warning, "Checks of sensors: {Problem}")]
    private partial void LogTrouble(string problem);
}
