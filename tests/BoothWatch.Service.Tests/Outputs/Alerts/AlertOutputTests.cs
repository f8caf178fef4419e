using BoothWatch.Service.Alerts;
using BoothWatch.Service.Outputs.Alerts;
using BoothWatch.Service.Outputs.Pump;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Verdicts;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Logging.Abstractions;

namespace BoothWatch.Service.Tests.Outputs.Alerts;

public sealed class AlertOutputTests : IDisposable
{
    private readonly AlertBench _bench = new();
    private readonly StubChannel _channel = new("one");

    public void Dispose() => _bench.Dispose();

    [Fact]
    public async Task Verdict_ThatGetsWorse_LeavesByTheChannelAndItsAllClearAfterIt()
    {
        using AlertDispatcher dispatcher = _bench.Dispatcher(_channel);
        AlertOutput output = Output(_bench.Store, dispatcher);
        await RunAsync(output, Verdict.Spray, 5);
        await RunAsync(output, Verdict.Wait, 60);
        await AlertBench.RoundAsync(dispatcher);
        await RunAsync(output, Verdict.Spray, 130);
        await AlertBench.RoundAsync(dispatcher);

        Assert.True(output.IsSession);
        Assert.Equal([("Wait", AlertMessageType.Alert), ("Spray again", AlertMessageType.Clear)], _channel.Taken.Select(message => (message.Title, message.Type)));
        Assert.Equal("cleared", Assert.Single(_bench.Store.Newest(10)).End);
    }

    [Fact]
    public async Task Step_ThatCouldNotBeKept_IsTakenAgainAndTellsOnce()
    {
        FailingJournal journal = new(_bench.Journal);
        AlertStore store = new(journal, _bench.Sources);
        using AlertDispatcher dispatcher = _bench.Dispatcher(_channel);
        AlertOutput output = Output(store, dispatcher);
        await RunAsync(output, Verdict.Spray, 5);
        journal.Fails = true;
        for (int attempt = 0; attempt < 3; attempt++)
        {
            await Assert.ThrowsAsync<JournalException>(() => RunAsync(output, Verdict.Wait, 1));
        }

        journal.Fails = false;
        await RunAsync(output, Verdict.Wait, 10);
        await AlertBench.RoundAsync(dispatcher);

        Assert.Single(_channel.Taken);
    }

    [Fact]
    public async Task Restart_WhileAnEpisodeIsOpen_TellsItNoSecondTimeAndClearsIt()
    {
        using AlertDispatcher dispatcher = _bench.Dispatcher(_channel);
        AlertOutput first = Output(_bench.Store, dispatcher);
        await RunAsync(first, Verdict.Spray, 5);
        await RunAsync(first, Verdict.Wait, 60);

        AlertOutput next = Output(_bench.Store, dispatcher);
        await RunAsync(next, Verdict.Wait, 60);
        await AlertBench.RoundAsync(dispatcher);
        Assert.Single(_channel.Taken);
        await RunAsync(next, Verdict.Spray, 130);
        await AlertBench.RoundAsync(dispatcher);

        Assert.Equal([AlertMessageType.Alert, AlertMessageType.Clear], _channel.Taken.Select(message => message.Type));
    }

    [Fact]
    public async Task Outage_OfTheJournal_MakesNoNewsOfWhatPassedMeanwhile()
    {
        FailingJournal journal = new(_bench.Journal);
        using AlertDispatcher dispatcher = _bench.Dispatcher(_channel);
        AlertOutput output = Output(new AlertStore(journal, _bench.Sources), dispatcher);
        await RunAsync(output, Verdict.Spray, 5);
        OutputPumpOptions queue = new();
        AlertsSetup.Queue(queue);
        using OutputPump pump = new(output, queue, _bench.Time, NullLogger<OutputPump>.Instance, () => 1);
        await pump.StartAsync(CancellationToken.None);
        journal.Fails = true;
        PostSeconds(pump, Verdict.Wait, 1);
        await Mqtt.Eventually.TrueAsync(() => pump.Health.IsFailing, "the journal is out");
        PostSeconds(pump, Verdict.Wait, 60);
        PostSeconds(pump, Verdict.Spray, 200);

        journal.Fails = false;
        await Mqtt.Eventually.TrueAsync(
            () =>
            {
                PostSeconds(pump, Verdict.Spray, 1);
                return !pump.Health.IsFailing;
            },
            "the journal is back");
        await pump.StopAsync(CancellationToken.None);

        Assert.Empty(_bench.Store.Newest(10));
    }

    [Fact]
    public async Task Limit_OfTheShop_HoldsFromTheNextAssessmentOn()
    {
        // 0.1 °C a minute from 4 °C: to the wanted 0.5 + 1.65 x 0.75 = 1.74 °C it is long, to 3 + 1.24 = 4.24 °C not at all.
        VerdictPolicy policy = new();
        using AlertDispatcher dispatcher = _bench.Dispatcher(_channel);
        AlertSources sources = _bench.Sources with { PolicyNow = () => policy };
        AlertOutput output = new(_bench.Store, dispatcher, [_channel], sources, _bench.Options, _bench.Time);
        await FallAsync(0, 400);
        Assert.Empty(_bench.Store.Newest(10));
        policy = policy.WithShopLimit(3, 1, 40);
        await FallAsync(400, 60);

        Assert.Equal("margin-closing", Assert.Single(_bench.Store.Newest(10)).Kind);

        async Task FallAsync(int from, int seconds)
        {
            for (int second = from; second < from + seconds; second++)
            {
                _bench.Time.Advance(TimeSpan.FromSeconds(1));
                await output.HandleAsync(TestAssessment.At(_bench.Time.GetUtcNow(), marginC: 4 - (0.1 * second / 60)), CancellationToken.None);
            }
        }
    }

    private void PostSeconds(OutputPump pump, Verdict verdict, int seconds)
    {
        for (int second = 0; second < seconds; second++)
        {
            _bench.Time.Advance(TimeSpan.FromSeconds(1));
            pump.Post(TestAssessment.At(_bench.Time.GetUtcNow(), verdict: verdict));
        }
    }

    private AlertOutput Output(AlertStore store, AlertDispatcher dispatcher) => new(store, dispatcher, [_channel], _bench.Sources, _bench.Options, _bench.Time);

    private async Task RunAsync(AlertOutput output, Verdict verdict, int seconds)
    {
        for (int second = 0; second < seconds; second++)
        {
            _bench.Time.Advance(TimeSpan.FromSeconds(1));
            await output.HandleAsync(TestAssessment.At(_bench.Time.GetUtcNow(), verdict: verdict), CancellationToken.None);
        }
    }

    private sealed class FailingJournal(IAlertJournal journal) : IAlertJournal
    {
        public bool Fails { get; set; }

        public void Write(bool durable, Action<SqliteConnection> work) => journal.Write(durable, connection =>
        {
            work(connection);
            if (Fails)
            {
                throw new IOException("no space left on device");
            }
        });

        public T Read<T>(T empty, Func<SqliteConnection, T> query) => journal.Read(empty, query);
    }
}
