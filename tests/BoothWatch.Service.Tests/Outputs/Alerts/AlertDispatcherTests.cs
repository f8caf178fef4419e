using BoothWatch.Alerts;
using BoothWatch.Service.Outputs.Alerts;

namespace BoothWatch.Service.Tests.Outputs.Alerts;

public sealed class AlertDispatcherTests : IDisposable
{
    private readonly AlertBench _bench = new();
    private readonly StubChannel _one = new("one");
    private readonly StubChannel _other = new("other");

    public void Dispose() => _bench.Dispose();

    [Fact]
    public async Task Message_IsHandedOverOnceToEveryChannel()
    {
        using AlertDispatcher dispatcher = _bench.Dispatcher(_one, _other);
        _bench.Begin(channels: ["one", "other"]);
        await AlertBench.RoundAsync(dispatcher);
        await AlertBench.RoundAsync(dispatcher);

        Assert.Equal(Assert.Single(_one.Taken).Id, Assert.Single(_other.Taken).Id);
        Assert.Equal(["one alert delivered", "other alert delivered"], _bench.Rows());
    }

    [Fact]
    public async Task Channel_ThatHangs_DelaysNoOther()
    {
        TaskCompletionSource never = new();
        _one.Hold = never.Task;
        using AlertDispatcher dispatcher = _bench.Dispatcher(_one, _other);
        _bench.Begin(channels: ["one", "other"]);
        dispatcher.Round();
        await Mqtt.Eventually.TrueAsync(() => _other.Taken.Count == 1 && _one.Attempts == 1, "the other has it");
        _bench.Begin("sensors", channels: ["one", "other"]);
        dispatcher.Round();
        await Mqtt.Eventually.TrueAsync(() => _other.Taken.Count == 2, "and the next one too");

        Assert.Equal(1, _one.Attempts);

        // Cut off after 15 s; it may have arrived.
        _bench.Time.Advance(TimeSpan.FromSeconds(15.1));
        await dispatcher.IdleAsync();
        Assert.Contains("no answer within 15 s", _bench.Outbox.RecordOf("one").LastError, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Failure_IsTriedAgainWithWaitsThatDouble()
    {
        _one.Trouble = () => new AlertDeliveryException("refused to connect");
        using AlertDispatcher dispatcher = _bench.Dispatcher(_one);
        _bench.Begin(channels: "one");
        List<int> attemptsAt = [];
        for (int second = 0; second < 40; second++)
        {
            int before = _one.Attempts;
            await AlertBench.RoundAsync(dispatcher);
            if (_one.Attempts > before)
            {
                attemptsAt.Add(second);
            }

            _bench.Time.Advance(TimeSpan.FromSeconds(1));
        }

        // First wait 2 s, doubling; the random part is 1 in this test.
        Assert.Equal([0, 2, 6, 14, 30], attemptsAt);
        _one.Trouble = () => null;
        _bench.Time.Advance(TimeSpan.FromSeconds(60));
        await AlertBench.RoundAsync(dispatcher);
        Assert.Single(_one.Taken);
    }

    [Fact]
    public async Task Wish_ToBeAskedLater_IsGranted()
    {
        _one.Trouble = () => new AlertDeliveryException("too many") { RetryAfter = TimeSpan.FromSeconds(90) };
        using AlertDispatcher dispatcher = _bench.Dispatcher(_one);
        _bench.Begin(channels: "one");
        await AlertBench.RoundAsync(dispatcher);
        _bench.Time.Advance(TimeSpan.FromSeconds(89));
        await AlertBench.RoundAsync(dispatcher);
        Assert.Equal(1, _one.Attempts);
        _bench.Time.Advance(TimeSpan.FromSeconds(1));
        await AlertBench.RoundAsync(dispatcher);
        Assert.Equal(2, _one.Attempts);
    }

    [Fact]
    public async Task Wait_ThatGotOld_IsSetAsideAndNeverDeliveredAsNews()
    {
        _one.Trouble = () => new AlertDeliveryException("refused to connect");
        using AlertDispatcher dispatcher = _bench.Dispatcher(_one);
        _bench.Begin(channels: "one");
        await AlertBench.RoundAsync(dispatcher);
        _one.Trouble = () => null;
        _bench.Time.Advance(TimeSpan.FromMinutes(10));
        await AlertBench.RoundAsync(dispatcher);
        Assert.Equal(["one alert expired"], _bench.Rows());

        // And its end is no news either.
        _bench.Clear(channels: "one");
        await AlertBench.RoundAsync(dispatcher);
        Assert.Empty(_one.Taken);
        Assert.Equal(["one alert expired"], _bench.Rows());
    }

    [Fact]
    public async Task Wait_OfAnEarlierRunThatGotOld_IsSetAside()
    {
        _bench.Begin(channels: "one");
        _bench.Time.Advance(TimeSpan.FromHours(1));
        using AlertDispatcher dispatcher = _bench.Dispatcher(_one);
        await AlertBench.RoundAsync(dispatcher);

        Assert.Empty(_one.Taken);
        Assert.Equal(["one alert expired"], _bench.Rows());
    }

    [Fact]
    public async Task WallClock_ThatIsSetAhead_MakesNoMessageOld()
    {
        _one.Trouble = () => new AlertDeliveryException("refused to connect");
        SteppedClock clock = new(_bench.Time);
        using AlertDispatcher dispatcher = _bench.Dispatcher(clock, _one);
        _bench.Begin(channels: "one");
        await AlertBench.RoundAsync(dispatcher);
        _one.Trouble = () => null;
        _bench.Time.Advance(TimeSpan.FromSeconds(3));
        clock.Step = TimeSpan.FromDays(365);
        await AlertBench.RoundAsync(dispatcher);

        Assert.Single(_one.Taken);
    }

    [Theory]
    [InlineData(3, "one alert delivered")]
    [InlineData(600, "one alert expired")]
    public async Task WallClock_ThatIsSetBack_HoldsNoMessageAndMakesNoOldOneNew(int afterS, string row)
    {
        _one.Trouble = () => new AlertDeliveryException("refused to connect");
        SteppedClock clock = new(_bench.Time);
        using AlertDispatcher dispatcher = _bench.Dispatcher(clock, _one);
        _bench.Begin(channels: "one");
        await AlertBench.RoundAsync(dispatcher);
        _one.Trouble = () => null;
        clock.Step = TimeSpan.FromHours(-1);
        _bench.Time.Advance(TimeSpan.FromSeconds(afterS));
        await AlertBench.RoundAsync(dispatcher);

        Assert.Equal([row], _bench.Rows());
    }

    [Fact]
    public async Task WallClock_ThatIsSetBackInQuietHours_MakesNoAllClearOutliveItsTime()
    {
        SteppedClock clock = new(_bench.Time);
        using AlertDispatcher dispatcher = _bench.Dispatcher(clock, _one);
        _bench.Begin(channels: "one");
        await AlertBench.RoundAsync(dispatcher);
        Episode episode = Assert.Single(_bench.Store.Open());
        DateTimeOffset morning = _bench.Time.GetUtcNow().AddHours(8);
        _bench.Store.Enter([new EpisodeChange(EpisodeStep.Cleared, episode, "Spray again", "f", "", morning)], _bench.Time.GetUtcNow(), []);
        await AlertBench.RoundAsync(dispatcher);
        clock.Step = TimeSpan.FromDays(-1);

        // News until half an hour after the quiet hours.
        _bench.Time.Advance(TimeSpan.FromHours(9));
        await AlertBench.RoundAsync(dispatcher);

        Assert.Equal(["one alert delivered", "one clear expired"], _bench.Rows());
    }

    [Fact]
    public async Task AllClear_OfAnAlertThatNeverLeft_ReplacesItAndNeitherIsSent()
    {
        _one.Trouble = () => new AlertDeliveryException("refused to connect");
        using AlertDispatcher dispatcher = _bench.Dispatcher(_one, _other);
        _bench.Begin(channels: ["one", "other"]);
        await AlertBench.RoundAsync(dispatcher);
        _bench.Clear(channels: ["one", "other"]);
        _one.Trouble = () => null;
        _bench.Time.Advance(TimeSpan.FromSeconds(60));
        await AlertBench.RoundAsync(dispatcher);

        Assert.Empty(_one.Taken);
        Assert.Equal([AlertMessageType.Alert, AlertMessageType.Clear], _other.Taken.Select(message => message.Type));
        Assert.Equal(["one alert superseded", "other alert delivered", "other clear delivered"], _bench.Rows());
    }

    [Fact]
    public async Task AllClear_OfAnAlertThatMayHaveArrived_IsSent()
    {
        _one.Trouble = () => new AlertDeliveryException("the answer was lost") { MayHaveArrived = true };
        using AlertDispatcher dispatcher = _bench.Dispatcher(_one);
        _bench.Begin(channels: "one");
        await AlertBench.RoundAsync(dispatcher);
        _one.Trouble = () => null;
        _bench.Clear(channels: "one");
        _bench.Time.Advance(TimeSpan.FromSeconds(60));
        await AlertBench.RoundAsync(dispatcher);

        Assert.Equal([AlertMessageType.Clear], _one.Taken.Select(message => message.Type));
    }

    [Fact]
    public async Task AllClear_WhileItsAlertIsOnTheWay_FollowsItOrVanishesWithIt()
    {
        TaskCompletionSource gate = new();
        _one.Hold = _other.Hold = gate.Task;
        _one.Trouble = () => _one.Attempts == 1 ? new AlertDeliveryException("refused to connect") : null;
        using AlertDispatcher dispatcher = _bench.Dispatcher(_one, _other);
        _bench.Begin(channels: ["one", "other"]);
        dispatcher.Round();
        await Mqtt.Eventually.TrueAsync(() => _one.Attempts + _other.Attempts == 2, "both are on the way");
        _bench.Clear(channels: ["one", "other"]);
        gate.SetResult();
        await dispatcher.IdleAsync();
        _bench.Time.Advance(TimeSpan.FromSeconds(60));
        await AlertBench.RoundAsync(dispatcher);

        Assert.Empty(_one.Taken);
        Assert.Equal([AlertMessageType.Alert, AlertMessageType.Clear], _other.Taken.Select(message => message.Type));
    }

    [Fact]
    public async Task Worse_TakesThePlaceOfWhatHasNotLeft_AndTheAllClearReachesWhoKnewTheFirst()
    {
        using AlertDispatcher dispatcher = _bench.Dispatcher(_one, _other);
        _bench.Begin(level: AlertLevel.Warning, channels: ["one", "other"]);
        await AlertBench.RoundAsync(dispatcher);
        _one.Trouble = () => new AlertDeliveryException("refused to connect");
        _bench.Time.Advance(TimeSpan.FromSeconds(1));
        _bench.Worsen(channels: ["one", "other"]);
        await AlertBench.RoundAsync(dispatcher);
        _one.Trouble = () => null;
        _bench.Clear(channels: ["one", "other"]);
        _bench.Time.Advance(TimeSpan.FromSeconds(60));
        await AlertBench.RoundAsync(dispatcher);

        Assert.Equal([AlertMessageType.Alert, AlertMessageType.Clear], _one.Taken.Select(message => message.Type));
        Assert.Equal([AlertMessageType.Alert, AlertMessageType.Alert, AlertMessageType.Clear], _other.Taken.Select(message => message.Type));
    }

    [Fact]
    public async Task Message_ThatWasOnItsWayWhenTheProgramEnded_IsSentOnceMoreWithTheSameId()
    {
        _bench.Begin(channels: "one");
        OutboxRow row = Assert.Single(_bench.Outbox.Waiting(10));
        Assert.True(_bench.Outbox.Begin(row));
        using AlertDispatcher next = _bench.Dispatcher(_one);
        await AlertBench.RoundAsync(next);
        await AlertBench.RoundAsync(next);

        Assert.Equal(row.Message.Id, Assert.Single(_one.Taken).Id);
    }

    [Fact]
    public async Task Acknowledged_WhatHasNotLeft_StaysHere()
    {
        _bench.Begin(channels: "one");
        AlertRow alert = Assert.Single(_bench.Store.Newest(10));
        Assert.NotNull(_bench.Store.Acknowledge(alert.Id, "page", _bench.Time.GetUtcNow())!.Acknowledged);
        using AlertDispatcher dispatcher = _bench.Dispatcher(_one);
        await AlertBench.RoundAsync(dispatcher);

        Assert.Empty(_one.Taken);
        Assert.Equal("page", _bench.Store.Acknowledge(alert.Id, "mqtt", _bench.Time.GetUtcNow().AddDays(1))!.AcknowledgedBy);
        Assert.Null(_bench.Store.Acknowledge("unknown", "mqtt", _bench.Time.GetUtcNow()));
    }

    [Fact]
    public async Task Refusal_ForGood_IsSetAsideAndHoldsUpNothing()
    {
        _one.Trouble = () => _one.Attempts == 1 ? new AlertDeliveryException("550 no such user") { IsFinal = true } : null;
        using AlertDispatcher dispatcher = _bench.Dispatcher(_one);
        _bench.Begin(channels: "one");
        _bench.Begin("sensors", channels: "one");
        await AlertBench.RoundAsync(dispatcher);
        await AlertBench.RoundAsync(dispatcher);

        Assert.Equal(["one alert refused", "one alert delivered"], _bench.Rows());
        Assert.Equal("550 no such user", _bench.Outbox.RecordOf("one").LastError);
    }

    [Fact]
    public async Task Channel_ThatWasSwitchedOff_KeepsNothing()
    {
        using AlertDispatcher dispatcher = _bench.Dispatcher(_one);
        _bench.Begin(channels: ["one", "gone"]);
        _one.OffBecause = "it is switched off";
        await AlertBench.RoundAsync(dispatcher);

        Assert.Equal(["one alert off", "gone alert off"], _bench.Rows());
    }

    [Fact]
    public void Episodes_ThatWereOpen_AreOpenAfterARestart()
    {
        _bench.Begin(channels: "one");

        Episode open = Assert.Single(_bench.Store.Open());
        Assert.Equal(("verdict", AlertKind.VerdictWorse, AlertLevel.Urgent, true), (open.Key, open.Kind, open.Level, open.IsTold));
    }
}
