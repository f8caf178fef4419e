using System.Diagnostics;
using BoothWatch.Service.Outputs.Pump;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Verdicts;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;

namespace BoothWatch.Service.Tests.Outputs.Pump;

public sealed class OutputPumpTests
{
    private readonly FakeTimeProvider _time = new(TestAssessment.Start);

    [Fact]
    public async Task Pump_WithWorkingOutput_HandsOverEverythingInOrder()
    {
        var output = new StubOutput((_, _) => Task.CompletedTask);
        using OutputPump pump = Start(output, new OutputPumpOptions());

        Assessment[] posted = PostSeconds(pump, 50);
        await pump.StopAsync(CancellationToken.None);

        Assert.Equal(posted, output.Seen);
        Assert.Equal(50, pump.Health.Handled);
        Assert.Equal(0, pump.Health.Dropped);
        Assert.Equal(TestAssessment.Start, pump.Health.LastSuccess);
        Assert.False(pump.Health.IsFailing);
    }

    [Fact]
    public async Task Pump_WithStuckOutput_DropsTheOldestAndCountsEveryDrop()
    {
        var release = new TaskCompletionSource();
        var output = new StubOutput((_, _) => release.Task);
        using OutputPump pump = Start(output, new OutputPumpOptions { Capacity = 4 });
        pump.Post(TestAssessment.At(TestAssessment.Start.AddSeconds(-1)));
        await output.CalledAsync();

        Assessment[] posted = PostSeconds(pump, 10);

        Assert.Equal(6, pump.Health.Dropped);
        Assert.Equal(4, pump.Health.Queued);
        release.SetResult();
        await pump.StopAsync(CancellationToken.None);
        Assert.Equal(posted[6..], output.Seen.Skip(1));
        Assert.Equal(5, pump.Health.Handled);
    }

    [Fact]
    public async Task Pump_WhereOnlyTheNewestCounts_CountsTheOthersAsSupersededAndNotAsDropped()
    {
        var release = new TaskCompletionSource();
        var output = new StubOutput((_, _) => release.Task);
        using OutputPump pump = Start(output, new OutputPumpOptions { Capacity = 1, NewestOnly = true });
        pump.Post(TestAssessment.At(TestAssessment.Start.AddSeconds(-1)));
        await output.CalledAsync();

        Assessment[] posted = PostSeconds(pump, 10);

        Assert.Equal((9L, 0L, 1), (pump.Health.Superseded, pump.Health.Dropped, pump.Health.Queued));
        release.SetResult();
        await pump.StopAsync(CancellationToken.None);
        Assert.Equal(posted[^1], output.Seen.Last());
        Assert.Equal((2L, 0L), (pump.Health.Handled, pump.Health.Dropped));
    }

    [Fact]
    public async Task Pump_WhereOnlyTheNewestCounts_CountsWhatItGaveUpAsDropped()
    {
        StubOutput output = new((_, _) => throw new IOException("down"));
        using OutputPump pump = Start(output, new OutputPumpOptions { Capacity = 1, NewestOnly = true, MaxAttempts = 3 });
        pump.Post(TestAssessment.At(TestAssessment.Start));
        await AdvanceUntilCalledAsync(output, calls: 3);
        await pump.StopAsync(CancellationToken.None);

        Assert.Equal(3, output.Seen.Count);
        Assert.Equal((0L, 1L), (pump.Health.Superseded, pump.Health.Dropped));
    }

    [Fact]
    public async Task Stop_WhereOnlyTheNewestCounts_CountsWhatStillWaitedAsDropped()
    {
        TaskCompletionSource release = new();
        StubOutput output = new((_, _) => release.Task);
        using OutputPump pump = Start(output, new OutputPumpOptions { Capacity = 1, NewestOnly = true });
        pump.Post(TestAssessment.At(TestAssessment.Start.AddSeconds(-1)));
        await output.CalledAsync();
        PostSeconds(pump, 5);
        await AdvanceUntilAsync(pump.StopAsync(CancellationToken.None));
        pump.Post(TestAssessment.At(TestAssessment.Start.AddSeconds(9)));

        // Four were overtaken, the fifth waited at the end, and the one after the stop came to nobody.
        Assert.Equal((4L, 2L), (pump.Health.Superseded, pump.Health.Dropped));
        release.SetResult();
    }

    [Fact]
    public async Task Post_WithOutputThatNeverReturns_DoesNotBlock()
    {
        using var never = new ManualResetEventSlim();
        var output = new StubOutput((_, _) =>
        {
            never.Wait(CancellationToken.None);
            return Task.CompletedTask;
        });
        using OutputPump pump = Start(output, new OutputPumpOptions { Capacity = 10 });
        Assessment assessment = TestAssessment.At(TestAssessment.Start);

        var watch = Stopwatch.StartNew();
        for (int i = 0; i < 10_000; i++)
        {
            pump.Post(assessment);
        }

        // 10,000 posts take a few milliseconds; one that waited for the output would never end.
        Assert.InRange(watch.Elapsed, TimeSpan.Zero, TimeSpan.FromSeconds(10));
        Assert.InRange(pump.Health.Dropped, 9_989, 9_990);
        never.Set();
        await pump.StopAsync(CancellationToken.None);
    }

    [Fact]
    public async Task Post_AfterStopOrDispose_CountsADropAndDoesNotThrow()
    {
        OutputPump pump = Start(new StubOutput((_, _) => Task.CompletedTask), new OutputPumpOptions());
        await pump.StopAsync(CancellationToken.None);
        pump.Post(TestAssessment.At(TestAssessment.Start));
        pump.Dispose();
        pump.Post(TestAssessment.At(TestAssessment.Start));

        Assert.Equal(2, pump.Health.Dropped);
    }

    [Fact]
    public async Task Pump_WithFailingOutput_TriesTheSameAgainAfterGrowingWaits()
    {
        var times = new List<DateTimeOffset>();
        var output = new StubOutput((_, _) =>
        {
            times.Add(_time.GetUtcNow());
            return times.Count <= 4 ? throw new IOException("the disk is gone") : Task.CompletedTask;
        });
        using OutputPump pump = Start(output, new OutputPumpOptions { FirstRetry = TimeSpan.FromSeconds(1) });

        pump.Post(TestAssessment.At(TestAssessment.Start));
        await AdvanceUntilCalledAsync(output, calls: 5);
        await pump.StopAsync(CancellationToken.None);

        double[] waits = [.. times.Zip(times.Skip(1), (a, b) => (b - a).TotalSeconds)];
        Assert.Equal([1, 2, 4, 8], waits.Select((w, i) => Math.Min(w, Math.Pow(2, i))));
        Assert.Single(output.Seen.Distinct());
        OutputHealth health = pump.Health;
        Assert.Equal((1, 0, 4, 0), (health.Handled, health.Dropped, health.Failures, health.FailuresInARow));
        Assert.Equal("the disk is gone", health.LastError);
        Assert.NotNull(health.LastErrorTime);
    }

    [Fact]
    public async Task Pump_WithAssessmentThatCanNeverBeHandled_GivesItUpAndGoesOn()
    {
        Assessment bad = TestAssessment.At(TestAssessment.Start);
        Assessment good = TestAssessment.At(TestAssessment.Start.AddSeconds(1));
        var output = new StubOutput((a, _) => a == bad ? throw new InvalidOperationException("no") : Task.CompletedTask);
        using OutputPump pump = Start(output, new OutputPumpOptions { MaxAttempts = 3 });

        pump.Post(bad);
        pump.Post(good);
        await AdvanceUntilCalledAsync(output, calls: 4);
        await pump.StopAsync(CancellationToken.None);

        Assert.Equal([bad, bad, bad, good], output.Seen);
        Assert.Equal((1L, 1L, 3L), (pump.Health.Handled, pump.Health.Dropped, pump.Health.Failures));
    }

    [Fact]
    public async Task Pump_WhenQueueOverflowsDuringRetry_GivesUpTheOneInHand()
    {
        Assessment first = TestAssessment.At(TestAssessment.Start);
        var output = new StubOutput((a, _) => a == first ? throw new IOException("down") : Task.CompletedTask);
        using OutputPump pump = Start(output, new OutputPumpOptions { Capacity = 1 });
        pump.Post(first);
        await output.CalledAsync();

        Assessment[] posted = PostSeconds(pump, 4)[1..];
        await AdvanceUntilCalledAsync(output, calls: 1);
        await pump.StopAsync(CancellationToken.None);

        Assert.Same(posted[^1], output.Seen.Last());
        Assert.Equal(2, output.Seen.Count);
        Assert.Equal(4, pump.Health.Dropped);
    }

    [Fact]
    public async Task Pump_WithAttemptOverItsLimit_CancelsItAndCountsAFailure()
    {
        var output = new StubOutput((_, token) => Task.Delay(Timeout.InfiniteTimeSpan, TimeProvider.System, token));
        using OutputPump pump = Start(output, new OutputPumpOptions { AttemptLimit = TimeSpan.FromSeconds(30), MaxAttempts = 2 });

        pump.Post(TestAssessment.At(TestAssessment.Start));
        await AdvanceUntilCalledAsync(output, calls: 2);

        Assert.Equal(1, pump.Health.Failures);
        Assert.Contains("longer than 30 s", pump.Health.LastError, StringComparison.Ordinal);
        Task stop = pump.StopAsync(CancellationToken.None);
        await AdvanceUntilAsync(stop);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Log_OfAFailure_HasAStackOnlyWhereTheWordsDoNotSayAll(bool saysAll)
    {
        Exception failure = saysAll ? new JournalException("the disk is full: free space there") : new InvalidOperationException("what is this");
        StubOutput output = new((_, _) => Task.FromException(failure));
        ShownErrors log = new();
        using var pump = new OutputPump(output, new OutputPumpOptions(), _time, log, () => 1);
        await pump.StartAsync(CancellationToken.None);
        pump.Post(TestAssessment.At(TestAssessment.Start));
        await output.CalledAsync();

        (string text, Exception? shown) = await log.First.Task.WaitAsync(TimeSpan.FromSeconds(30));

        Assert.Contains(failure.Message, text, StringComparison.Ordinal);
        Assert.Equal(saysAll ? null : failure, shown);
        await pump.StopAsync(CancellationToken.None);
    }

    private sealed class ShownErrors : ILogger<OutputPump>
    {
        public TaskCompletionSource<(string Text, Exception? Shown)> First { get; } = new(TaskCreationOptions.RunContinuationsAsynchronously);

        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
            First.TrySetResult((formatter(state, exception), exception));
    }

    [Fact]
    public async Task Stop_WithWaitingAssessments_FlushesThem()
    {
        var release = new TaskCompletionSource();
        var output = new StubOutput((_, _) => release.Task);
        using OutputPump pump = Start(output, new OutputPumpOptions());
        Assessment[] posted = PostSeconds(pump, 20);
        await output.CalledAsync();

        Task stop = pump.StopAsync(CancellationToken.None);
        Assert.False(stop.IsCompleted);
        release.SetResult();
        await stop;

        Assert.Equal(posted, output.Seen);
        Assert.Equal(0, pump.Health.Dropped);
    }

    [Fact]
    public async Task Stop_WithStuckOutput_EndsAtTheLimitAndCountsWhatIsLost()
    {
        var release = new TaskCompletionSource();
        var output = new StubOutput((_, _) => release.Task);
        using OutputPump pump = Start(output, new OutputPumpOptions { FlushLimit = TimeSpan.FromSeconds(5) });
        PostSeconds(pump, 20);
        await output.CalledAsync();

        Task stop = pump.StopAsync(CancellationToken.None);
        _time.Advance(TimeSpan.FromSeconds(4.9));
        await Task.Yield();
        Assert.False(stop.IsCompleted);
        await AdvanceUntilAsync(stop);

        Assert.Equal(19, pump.Health.Dropped);
        release.SetResult();
    }

    [Fact]
    public async Task Stop_WithFailingOutput_TriesOnceMoreAndDoesNotWaitForTheBackOff()
    {
        var output = new StubOutput((_, _) => throw new IOException("down"));
        using OutputPump pump = Start(output, new OutputPumpOptions());
        PostSeconds(pump, 5);
        await output.CalledAsync();

        await pump.StopAsync(CancellationToken.None);

        Assert.Equal(5, pump.Health.Dropped);
        Assert.Equal(2, output.Seen.Count);
        Assert.Single(output.Seen.Distinct());
    }

    private OutputPump Start(StubOutput output, OutputPumpOptions options)
    {
        var pump = new OutputPump(output, options, _time, NullLogger<OutputPump>.Instance, () => 1);
        pump.StartAsync(CancellationToken.None);
        return pump;
    }

    private static Assessment[] PostSeconds(OutputPump pump, int count)
    {
        Assessment[] assessments = [.. Enumerable.Range(0, count).Select(s => TestAssessment.At(TestAssessment.Start.AddSeconds(s)))];
        foreach (Assessment assessment in assessments)
        {
            pump.Post(assessment);
        }

        return assessments;
    }

    private async Task AdvanceUntilCalledAsync(StubOutput output, int calls)
    {
        var watch = Stopwatch.StartNew();
        while (calls > 0)
        {
            Assert.True(watch.Elapsed < TimeSpan.FromSeconds(30), $"{calls} calls are still missing after 30 s");
            if (output.WasCalled())
            {
                calls--;
                continue;
            }

            _time.Advance(TimeSpan.FromSeconds(0.125));
            await Task.Yield();
        }
    }

    private async Task AdvanceUntilAsync(Task task)
    {
        var watch = Stopwatch.StartNew();
        while (!task.IsCompleted)
        {
            Assert.True(watch.Elapsed < TimeSpan.FromSeconds(30), "not finished after 30 s");
            _time.Advance(TimeSpan.FromSeconds(0.125));
            await Task.Yield();
        }

        await task;
    }
}
