using BoothWatch.Service.Sensors;

namespace BoothWatch.Service.Assessing;

/// <summary>
/// Asks every sensor in turn, once a second, off the assessment loop: a slow or hanging bus makes readings old,
/// which the loop sees, and never makes the loop late.
/// </summary>
public sealed partial class SensorPoller(
    IEnumerable<ISensor> sensors,
    SnapshotBoard board,
    TimeProvider time,
    ILogger<SensorPoller> logger) : BackgroundService
{
    /// <summary>Time between two sweeps over the sensors.</summary>
    public static readonly TimeSpan Interval = TimeSpan.FromSeconds(1);

    private readonly ISensor[] _sensors = [.. sensors];
    private readonly Dictionary<string, string?> _lastCause = [];

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        // A sensor read blocks; leave the thread that starts the host.
        await Task.Yield();
        using PeriodicTimer timer = new(Interval, time);
        do
        {
            Sweep();
        }
        while (await timer.WaitForNextTickAsync(stoppingToken));
    }

    /// <summary>Asks each sensor once and posts what it answers.</summary>
    internal void Sweep()
    {
        foreach (ISensor sensor in _sensors)
        {
            SensorAnswer answer = Read(sensor);
            board.Post(sensor, answer);
            LogChange(sensor, answer.NoReadingCause);
        }
    }

    private static SensorAnswer Read(ISensor sensor)
    {
        try
        {
            return sensor.Read();
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or TimeoutException)
        {
            return SensorAnswer.NoReading(fault.Message);
        }
    }

    private void LogChange(ISensor sensor, string? cause)
    {
        string? before = _lastCause.GetValueOrDefault(sensor.Name);
        _lastCause[sensor.Name] = cause;
        if (cause is not null && before is null)
        {
            LogNoReading(sensor.Name, sensor.Description, cause);
        }
        else if (cause is null && before is not null)
        {
            LogReadingAgain(sensor.Name, sensor.Description);
        }
    }

    [LoggerMessage(EventId = 101, Level = LogLevel.Warning, Message = "{Sensor} gives no reading ({Description}): {Cause}")]
    private partial void LogNoReading(string sensor, string description, string cause);

    [LoggerMessage(EventId = 102, Level = LogLevel.Information, Message = "{Sensor} gives readings again ({Description})")]
    private partial void LogReadingAgain(string sensor, string description);
}
