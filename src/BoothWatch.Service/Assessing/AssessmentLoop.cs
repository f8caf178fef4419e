using BoothWatch.Film;
using BoothWatch.Readings;
using BoothWatch.Service.Outputs;
using BoothWatch.Service.Outputs.Pump;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Assessing;

/// <summary>
/// Once a second: read the board, assess, decide, set the light. Everything else hangs off it through the pumps of the outputs
/// and cannot delay it. An exception here ends the service, and with it the light falls to wait.
/// </summary>
public sealed partial class AssessmentLoop(
    SnapshotBoard board,
    Assessor assessor,
    VerdictDwell dwell,
    CoatPlan coat,
    IVerdictLight light,
    AssessmentFanOut outputs,
    SystemdWatchdog watchdog,
    TimeProvider time,
    ILogger<AssessmentLoop> logger) : BackgroundService
{
    /// <summary>Time between two ticks.</summary>
    public static readonly TimeSpan Interval = TimeSpan.FromSeconds(1);

    private Verdict? _lastVerdict;

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        await Task.Yield();
        using PeriodicTimer timer = new(Interval, time);
        do
        {
            Tick();
        }
        while (await timer.WaitForNextTickAsync(stoppingToken));
    }

    /// <summary>One round: from the readings to the light.</summary>
    internal Assessment Tick()
    {
        long start = time.GetTimestamp();
        BoothSnapshot snapshot = board.Take();
        Assessment assessment = dwell.Hold(assessor.Assess(snapshot, coat), board.Elapsed);
        light.Show(assessment.Verdict);
        outputs.Post(assessment);
        watchdog.Feed();
        TickMeter.DurationS.Record(time.GetElapsedTime(start).TotalSeconds);

        if (assessment.Verdict != _lastVerdict)
        {
            _lastVerdict = assessment.Verdict;
            string word = assessment.Verdict.Word();
            LogVerdict(word, assessment.Reasons[0]);
        }

        return assessment;
    }

    [LoggerMessage(EventId = 111, Level = LogLevel.Information, Message = "Verdict {Verdict}: {Reason}")]
    private partial void LogVerdict(string verdict, Reason reason);
}
