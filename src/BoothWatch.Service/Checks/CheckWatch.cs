using BoothWatch.Readings;
using BoothWatch.Service.Assessing;

namespace BoothWatch.Service.Checks;

/// <summary>Lets the book of checks see the readings, once a second, beside the assessment loop and never in its way.</summary>
internal sealed class CheckWatch(CheckBook book, PairDifferences differences, SnapshotBoard board, TimeProvider time) : BackgroundService
{
    private static readonly TimeSpan Interval = TimeSpan.FromSeconds(1);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        await Task.Yield();
        using PeriodicTimer timer = new(Interval, time);
        do
        {
            BoothSnapshot snapshot = board.Take();
            book.Tick(snapshot);
            differences.Take(snapshot);
        }
        while (await timer.WaitForNextTickAsync(stoppingToken));
    }
}
