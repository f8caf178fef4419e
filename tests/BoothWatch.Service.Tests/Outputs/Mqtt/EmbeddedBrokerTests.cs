using System.Net;
using System.Net.Sockets;
using System.Text.Json.Nodes;
using BoothWatch.Service.Outputs.Mqtt;
using BoothWatch.Service.Outputs.Mqtt.Broker;
using BoothWatch.Service.Tests.Outputs.Series;
using BoothWatch.Verdicts;
using MQTTnet;
using MQTTnet.Protocol;

namespace BoothWatch.Service.Tests.Outputs.Mqtt;

public sealed class EmbeddedBrokerTests : IDisposable
{
    private readonly JournalFolder _folder = new();
    private readonly int _port = Mosquitto.FreePort();

    private static DateTimeOffset Now => TimeProvider.System.GetUtcNow();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Booth_Published_IsFoundByAnyHomieClient()
    {
        await using MqttBooth booth = await MqttBooth.EmbeddedAsync(_folder, _port);
        await booth.PublishAsync(TestAssessment.At(Now, verdict: Verdict.SlowDown));

        IReadOnlyDictionary<string, MqttReader.Heard> kept = await MqttReader.KeptAsync(_port);
        string device = "homie/5/harbour-lane-corner";
        Assert.Equal("ready", kept[$"{device}/$state"].Payload);
        Assert.Equal("slow down", kept[$"{device}/verdict/state"].Payload);
        Assert.Equal("21.5", kept[$"{device}/air/temperature"].Payload);
        Assert.Equal("true", kept[$"{device}/exhaust/proven"].Payload);
        foreach ((string node, JsonNode? content) in JsonNode.Parse(kept[$"{device}/$description"].Payload)!["nodes"]!.AsObject())
        {
            // The filter has no sensor in this assessment, so its topic is clear.
            Assert.All(
                content!["properties"]!.AsObject().Where(property => property.Key != "filter-pressure-drop"),
                property => Assert.True(kept.ContainsKey($"{device}/{node}/{property.Key}"), property.Key));
        }
    }

    [Fact]
    public async Task Messages_CarryQualityContentTypeAndExpiry()
    {
        await using MqttBooth booth = await MqttBooth.EmbeddedAsync(_folder, _port, ("expiryS", "30"));
        await using MqttReader reader = await MqttReader.ConnectAsync(_port);
        await booth.PublishAsync(TestAssessment.At(Now));
        await Eventually.TrueAsync(() => reader.Last(booth.Topics.State) == "ready", "ready");

        MqttReader.Heard Of(string topic) => reader.All.Last(message => message.Topic == topic);
        Assert.All(reader.All, message => Assert.Equal(MqttQualityOfServiceLevel.AtLeastOnce, message.Quality));
        Assert.Equal(("application/json", 30u, true), Facts(Of(booth.Topics.Assessment)));
        Assert.Equal(("text/plain", 30u, true), Facts(Of(booth.Topics.Property("air", "temperature"))));
        Assert.Equal(("text/plain", 0u, true), Facts(Of(booth.Topics.State)));
        await Eventually.TrueAsync(() => reader.Last(booth.Topics.VerdictChange) is not null, "the change");
        Assert.Equal(("application/json", 0u, false), Facts(Of(booth.Topics.VerdictChange)));

        static (string?, uint, bool) Facts(MqttReader.Heard message) => (message.ContentType, message.ExpiryS, message.IsRetained);
    }

    [Fact]
    public async Task State_RunsFromInitOverReadyToDisconnected()
    {
        MqttBooth booth = await MqttBooth.EmbeddedAsync(_folder, _port);
        await using MqttReader reader = await MqttReader.ConnectAsync(_port);
        await using (booth)
        {
            await booth.PublishAsync(TestAssessment.At(Now));
        }

        string[] Seen() => [.. reader.All.Where(message => message.Topic.EndsWith("/$state", StringComparison.Ordinal)).Select(message => message.Payload)];
        await Eventually.TrueAsync(() => Seen().Contains("disconnected"), "the goodbye");
        Assert.Equal(["init", "ready", "disconnected"], Seen());
    }

    [Fact]
    public async Task Readings_OfABoothThatSaysNothingMore_Disappear()
    {
        await using MqttBooth booth = await MqttBooth.EmbeddedAsync(_folder, _port, ("expiryS", "5"));
        await booth.PublishAsync(TestAssessment.At(Now));
        Assert.Contains(booth.Topics.Assessment, (await MqttReader.KeptAsync(_port)).Keys);

        IReadOnlyDictionary<string, MqttReader.Heard> kept = await MqttReader.KeptAsync(_port);
        for (int look = 0; look < 200 && kept.ContainsKey(booth.Topics.Assessment); look++)
        {
            await Task.Delay(TimeSpan.FromMilliseconds(100), TimeProvider.System);
            kept = await MqttReader.KeptAsync(_port);
        }

        Assert.Equal([booth.Topics.Description, booth.Topics.State, booth.Topics.RecentVerdictChanges], kept.Keys.OrderBy(k => !k.StartsWith("homie", StringComparison.Ordinal)).ThenBy(k => k, StringComparer.Ordinal));
    }

    [Fact]
    public async Task Strangers_MayReadAndWriteElsewhere_ButNotSpeakForTheBooth()
    {
        await using MqttBooth booth = await MqttBooth.EmbeddedAsync(_folder, _port);
        await booth.PublishAsync(TestAssessment.At(Now, verdict: Verdict.Wait));
        await using MqttReader stranger = await MqttReader.ConnectAsync(_port);

        Assert.Equal(MqttClientPublishReasonCode.NotAuthorized, (await stranger.WriteAsync(booth.Topics.Property("verdict", "state"), "spray", retain: true)).ReasonCode);
        Assert.Equal(MqttClientPublishReasonCode.NotAuthorized, (await stranger.WriteAsync(booth.Topics.Assessment, "{}", retain: true)).ReasonCode);
        Assert.True((await stranger.WriteAsync("yard/air", "21")).IsSuccess);
        Assert.Equal(MqttClientConnectResultCode.ClientIdentifierNotValid, await MqttReader.KnockAsync(_port, clientId: "boothwatch-harbour-lane-corner"));
        Assert.Equal("wait", (await MqttReader.KeptAsync(_port))[booth.Topics.Property("verdict", "state")].Payload);
    }

    [Fact]
    public async Task Commands_OfAnyKind_ChangeNothingAndAreCounted()
    {
        await using MqttBooth booth = await MqttBooth.EmbeddedAsync(_folder, _port);
        await booth.PublishAsync(TestAssessment.At(Now, verdict: Verdict.Wait));
        await using MqttReader stranger = await MqttReader.ConnectAsync(_port);
        CommandIntake intake = booth.Get<CommandIntake>();
        string good = $$"""{"id":"a1","time":"{{Now:O}}"}""";

        await stranger.WriteAsync($"{booth.Topics.Command}/mark-coat", good);
        await stranger.WriteAsync($"{booth.Topics.Command}/mark-coat", good, retain: true);
        await stranger.WriteAsync($"{booth.Topics.Command}/verdict", "spray");
        await stranger.WriteAsync($"{booth.Topics.Property("verdict", "state")}/set", "spray");

        await Eventually.TrueAsync(() => Enum.GetValues<CommandRefusal>().Sum(intake.Refused) == 3, "three commands are refused");
        Assert.Equal(
            (1L, 1L, 1L),
            (intake.Refused(CommandRefusal.NotObeyedYet), intake.Refused(CommandRefusal.Retained), intake.Refused(CommandRefusal.Unknown)));
        Assert.Equal("wait", (await MqttReader.KeptAsync(_port))[booth.Topics.Property("verdict", "state")].Payload);
    }

    [Fact]
    public async Task Port_TakenByAnother_IsNamedAndTheServiceGoesOn()
    {
        using TcpListener other = new(IPAddress.Loopback, _port);
        other.Start();

        await using MqttBooth booth = await MqttBooth.EmbeddedAsync(_folder, _port);
        booth.Tick(TestAssessment.At(Now));

        string warning = Assert.Single(booth.Log.Warnings, line => line.Contains("mqtt:broker:port", StringComparison.Ordinal) && line.StartsWith("No embedded", StringComparison.Ordinal));
        Assert.Contains($"port {_port} is taken by another program", warning, StringComparison.Ordinal);
        await Eventually.TrueAsync(() => booth.Health.IsFailing, "the page sees it");
        Assert.Contains("mqtt:broker:port", booth.Health.LastError, StringComparison.Ordinal);

        other.Dispose();
        booth.Tick(TestAssessment.At(Now));
        await Eventually.TrueAsync(() => booth.Get<EmbeddedBroker>().IsRunning && !booth.Health.IsFailing, "the broker starts once the port is free");
    }

    [Fact]
    public async Task Broker_WithAPassword_LetsNobodyInWithoutIt()
    {
        string passwordFile = Path.Combine(_folder.Folder, "password");
        await File.WriteAllTextAsync(passwordFile, "open sesame\n");
        await using MqttBooth booth = await MqttBooth.EmbeddedAsync(_folder, _port, ("broker:user", "shop"), ("broker:passwordFile", passwordFile));
        await booth.PublishAsync(TestAssessment.At(Now));

        Assert.Equal(MqttClientConnectResultCode.BadUserNameOrPassword, await MqttReader.KnockAsync(_port));
        Assert.Equal(MqttClientConnectResultCode.BadUserNameOrPassword, await MqttReader.KnockAsync(_port, "shop", "wrong"));
        Assert.Equal(MqttClientConnectResultCode.Success, await MqttReader.KnockAsync(_port, "shop", "open sesame"));
    }
}
