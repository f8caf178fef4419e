using System.Net;
using System.Net.Sockets;
using BoothWatch.Service.Outputs.Pump;
using BoothWatch.Service.Tests.Outputs.Influx;
using BoothWatch.Service.Tests.Outputs.Series;
using BoothWatch.Verdicts;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;

namespace BoothWatch.Service.Tests.Outputs.Mqtt;

/// <summary>What the health of the output says while the broker is away, and after.</summary>
public sealed class ChangesWaitingTests : IDisposable
{
    private readonly JournalFolder _folder = new();

    private static DateTimeOffset Now => TimeProvider.System.GetUtcNow();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Health_WhileTheBrokerIsAway_CountsChangesAsWaitingAndNoLiveStateAsLost()
    {
        await using MqttBooth booth = await MqttBooth.ExternalAsync(_folder, VictoriaMetrics.FreePort());

        // One change of before this start, which is not meant, and three of this run with many states between them.
        booth.Journal(TestAssessment.At(Now.AddHours(-1), verdict: Verdict.Spray));
        for (int tick = 0; tick < 30; tick++)
        {
            booth.Tick(TestAssessment.At(Now, verdict: (Verdict)(tick / 10 % 2)));
        }

        await Eventually.TrueAsync(() => booth.Health is { IsFailing: true, Queued: 3 }, "three changes wait");
        OutputHealth health = booth.Health;
        Assert.Equal((0L, 0L), (health.Dropped, health.Handled));
        Assert.True(health.Superseded > 0, $"states were to be overtaken: {health}");
        Assert.InRange(health.OldestWaiting!.Value, TimeSpan.Zero, TimeSpan.FromMinutes(1));
        Assert.StartsWith("3 waiting for ", OutputView.LineOf(health).Detail, StringComparison.Ordinal);
        Assert.Equal((3L, 0L), (OutputView.StatusOf(health).Backlog, OutputView.StatusOf(health).Dropped));
    }

    [Fact]
    public async Task Start_UntilTheFirstTryHasEnded_IsNoFailure()
    {
        // Takes the connection and never answers, as a broker on a busy machine does for a while.
        using TcpListener slow = new(IPAddress.Loopback, 0);
        slow.Start();
        FakeTimeProvider time = new(Now);
        MqttBooth booth = await MqttBooth.StartAsync(
            _folder, services => services.AddSingleton<TimeProvider>(time), ("use", "external"), ("host", "127.0.0.1"), ("port", $"{((IPEndPoint)slow.LocalEndpoint).Port}"));
        booth.Tick(TestAssessment.At(Now));
        await Eventually.TrueAsync(slow.Pending, "it tries");

        DateTimeOffset start = time.GetUtcNow();
        await Eventually.TrueAsync(
            () =>
            {
                time.Advance(TimeSpan.FromMilliseconds(500));
                return booth.Health.IsFailing;
            },
            "the try is given up");

        Assert.True(time.GetUtcNow() - start >= TimeSpan.FromSeconds(9), "a start was counted as a failure before its first try had ended");
        Assert.EndsWith(": it did not answer in time", booth.Health.LastError, StringComparison.Ordinal);
        Task stop = booth.DisposeAsync().AsTask();
        await Eventually.TrueAsync(
            () =>
            {
                time.Advance(TimeSpan.FromSeconds(1));
                return stop.IsCompleted;
            },
            "it stops");
        await stop;
    }

    [Fact]
    public async Task Health_OfABrokerThatHasAll_SaysThatNothingWaits()
    {
        int port = VictoriaMetrics.FreePort();
        await using MqttBooth booth = await MqttBooth.EmbeddedAsync(_folder, port);
        await booth.PublishAsync(TestAssessment.At(Now, verdict: Verdict.Wait));
        await booth.PublishAsync(TestAssessment.At(Now, verdict: Verdict.Spray));

        await Eventually.TrueAsync(() => booth.Health is { Queued: 0, OldestWaiting: null }, "nothing waits");
        Assert.Equal("2", (await File.ReadAllTextAsync(Path.ChangeExtension(_folder.Location.Path, ".mqtt-cursor"))).Split(' ')[0]);
        Assert.Equal("working", OutputView.LineOf(booth.Health).Detail);
        Assert.Equal(0, booth.Health.Dropped);
    }
}
