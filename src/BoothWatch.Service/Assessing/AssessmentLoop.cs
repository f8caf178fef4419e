using BoothWatch.Film;
using BoothWatch.Readings;
using BoothWatch.Service.Outputs;
using BoothWatch.Service.Outputs.Pump;
using BoothWatch.Verdicts;
using BoothWatch.Warming;

namespace BoothWatch.Service.Assessing;

/// <summary>
/// Once a second: read the board, assess, decide, set the light. Everything else hangs off it through the pumps of the outputs
/// and cannot delay it. However it ends, asked to or by an exception that ends the service, it lights wait at once.
/// </summary>
public sealed partial class AssessmentLoop(
    SnapshotBoard board,
    Assessor assessor,
    VerdictDwell dwell,
    CoatPlan coat,
    WarmingTrail trail,
    IVerdictLight light,
    AssessmentFanOut outputs,
    SystemdWatchdog watchdog,
    TimeProvider time,
    ILogger<AssessmentLoop> logger) : BackgroundService
{
    /// <summary>Time between two ticks.</summary>
    public static readonly TimeSpan Interval = TimeSpan.FromSeconds(1);

    private Verdict? _lastVerdict;
    private bool _lightHung;

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        await Task.Yield();
        try
        {
            using PeriodicTimer timer = new(Interval, time);
            do
            {
                Tick();
            }
            while (await timer.WaitForNextTickAsync(stoppingToken));
        }
        finally
        {
            // Nobody assesses any more; the light would find out by itself only after some seconds.
            light.Show(Verdict.Wait);
        }
    }

    /// <summary>One round: from the readings to the light.</summary>
    internal Assessment Tick()
    {
        long start = time.GetTimestamp();
        BoothSnapshot snapshot = board.Take();
        trail.Take(snapshot, board.Elapsed);
        Assessment assessment = dwell.Hold(assessor.Assess(snapshot, coat, trail), board.Elapsed);
        light.Show(assessment.Verdict);
        outputs.Post(assessment);
        FeedWatchdog();
        TickMeter.DurationS.Record(time.GetElapsedTime(start).TotalSeconds);

        if (assessment.Verdict != _lastVerdict)
        {
            _lastVerdict = assessment.Verdict;
            string word = assessment.Verdict.Word();
            LogVerdict(word, assessment.Reasons[0]);
        }

        return assessment;
    }

    // A light that hangs may show spray for ever: it is as bad as a loop that hangs, and only a new process frees it.
    private void FeedWatchdog()
    {
        bool hung = !light.IsAlive;
        if (hung && !_lightHung)
        {
            LogLightHangs();
        }

        _lightHung = hung;
        if (!hung)
        {
            watchdog.Feed();
        }
    }

    [LoggerMessage(EventId = 112, Level = LogLevel.Critical, Message = "The light hangs in a write to a pin and may show an old verdict; without the watchdog of systemd, restart BoothWatch by hand")]
    private partial void LogLightHangs();

    [LoggerMessage(EventId = 111, Level = LogLevel.Information, Message = "Verdict {Verdict}: {Reason}")]
    private partial void LogVerdict(string verdict, Reason reason);
}
