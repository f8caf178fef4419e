using System.Globalization;
using System.Text.Json;
using BoothWatch.Alerts;
using BoothWatch.Service.Alerts;
using BoothWatch.Service.Assessing;
using BoothWatch.Service.Outputs.Alerts;
using BoothWatch.Service.Outputs.Mqtt;
using BoothWatch.Service.Tests.Access;
using BoothWatch.Service.Tests.Jobs;
using BoothWatch.Service.Tests.Outputs.Alerts;
using BoothWatch.Service.Tests.Outputs.Mqtt;
using Microsoft.Extensions.DependencyInjection;

namespace BoothWatch.Service.Tests.Alerts;

/// <summary>The addresses of alerts over the whole service, its embedded broker among it.</summary>
public sealed class AlertApiTests : IAsyncLifetime
{
    private readonly int _port = Mosquitto.FreePort();
    private JobHost _host = null!;

    public async Task InitializeAsync() => _host = await JobHost.Start(
        ("mqtt:broker:port", _port.ToString(CultureInfo.InvariantCulture)), ("mqtt:firstRetryS", "0.1"),

        // The loop would end the alerts that a test begins by hand: no rule sees them.
        ("alerts:enabled", "false"));

    public async Task DisposeAsync() => await _host.DisposeAsync();

    [Fact]
    public async Task State_ListsEveryChannelWithWhyItIsOff()
    {
        JsonElement state = await _host.Get("/api/alerts");

        Assert.False(state.GetProperty("enabled").GetBoolean());
        Assert.Equal(JsonValueKind.Null, state.GetProperty("quietUntil").ValueKind);
        Assert.Equal(
            [("webPush", true), ("email", false), ("webhook", false), ("mqtt", true)],
            state.GetProperty("channels").EnumerateArray().Select(channel => (channel.GetProperty("name").GetString(), channel.GetProperty("on").GetBoolean())));
        Assert.Contains("alerts:email:host", Channel(state, "email").GetProperty("offBecause").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Limits_AreThoseInForceAndNotThoseOfTheSettings()
    {
        PolicyInForce policy = _host.Services.GetRequiredService<PolicyInForce>();
        policy.Set(policy.Configured.WithShopLimit(2.5, 1, 40));

        Assert.Equal(2.5, _host.Services.GetRequiredService<AlertSources>().PolicyNow!().RequiredMarginC);
    }

    [Fact]
    public async Task Test_OfAChannel_ArrivesAndShowsAsItsLastSuccess()
    {
        await using MqttReader reader = await ConnectAsync();
        (int status, JsonElement answer) = await _host.Post("/api/alerts/test/mqtt", "{}");

        Assert.Equal((200, 1), (status, answer.GetProperty("taken").GetInt32()));
        await Eventually.TrueAsync(() => reader.All.Any(message => message.Topic.EndsWith("/alert", StringComparison.Ordinal)), "the test message");
        MqttReader.Heard heard = reader.All.Single(message => message.Topic.EndsWith("/alert", StringComparison.Ordinal));
        Assert.Equal((false, "test"), (heard.IsRetained, JsonDocument.Parse(heard.Payload).RootElement.GetProperty("type").GetString()));
        Assert.NotEqual(JsonValueKind.Null, Channel(await _host.Get("/api/alerts"), "mqtt").GetProperty("lastSuccess").ValueKind);
    }

    [Theory]
    [InlineData("email", 409, "alerts:email:host")]
    [InlineData("pigeon", 404, "webPush, email, webhook, mqtt")]
    public async Task Test_OfAChannelThatIsOffOrUnknown_SaysWhatToDo(string channel, int expected, string words)
    {
        (int status, JsonElement answer) = await _host.Post($"/api/alerts/test/{channel}", "{}");

        Assert.Equal(expected, status);
        Assert.Contains(words, answer.GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Alert_ByMqtt_IsAcknowledgedByTheCommandThere()
    {
        await using MqttReader reader = await ConnectAsync();
        Begin();
        await Eventually.TrueAsync(() => Heard(reader) is not null, "the alert");
        string alert = Heard(reader)!.Value.GetProperty("alert").GetString()!;
        string topics = _host.Services.GetRequiredService<MqttTopics>().Command;
        await reader.WriteAsync($"{topics}/acknowledge-alert", JsonSerializer.Serialize(new { id = "c1", time = TimeProvider.System.GetUtcNow().UtcDateTime, alert }));

        AlertStore store = _host.Services.GetRequiredService<AlertStore>();
        await Eventually.TrueAsync(() => store.Newest(1)[0].Acknowledged is not null, "it is acknowledged");
        Assert.Equal("mqtt", store.Newest(1)[0].AcknowledgedBy);
    }

    [Fact]
    public async Task Token_FromAnywhere_AcknowledgesItsOwnAlertAndNothingElse()
    {
        Begin();
        AlertRow alert = _host.Services.GetRequiredService<AlertStore>().Newest(1)[0];
        string token = _host.Services.GetRequiredService<AcknowledgeTokens>().Of(alert.Id);
        static void FromAfar(HttpRequestMessage request) => request.Headers.Add(SeemsFrom.Header, SeemsFrom.Afar);

        // Without a token, from elsewhere: no change at all.
        Assert.Equal(401, (await _host.Post($"/api/alerts/{alert.Id}/acknowledge", "{}", change: FromAfar)).Status);
        Assert.Equal(401, (await _host.Post("/api/alerts/test/mqtt", "{}", change: FromAfar)).Status);
        Assert.Equal(403, (await _host.Post("/api/alerts/acknowledge", $$"""{"token":"{{token[..^2]}}AA"}""", change: FromAfar)).Status);
        Assert.Equal(403, (await _host.Post("/api/alerts/acknowledge", $$"""{"token":"0198{{token[4..]}}"}""", change: FromAfar)).Status);
        Assert.Equal(415, (await _host.Post("/api/alerts/acknowledge", $$"""{"token":"{{token}}"}""", "text/plain", FromAfar)).Status);

        Assert.Equal(200, (await _host.Post("/api/alerts/acknowledge", $$"""{"token":"{{token}}"}""", change: FromAfar)).Status);
        Assert.Equal("link", _host.Services.GetRequiredService<AlertStore>().Newest(1)[0].AcknowledgedBy);
    }

    [Fact]
    public async Task Phone_ThatSubscribes_IsCountedAndRemoved()
    {
        using PushDecrypter phone = new();
        string body = JsonSerializer.Serialize(new { endpoint = "https://push.example/abc", p256dh = Base64Url.Encode(phone.PublicKey), auth = Base64Url.Encode(phone.Auth), name = "bench" });
        Assert.Equal(200, (await _host.Post("/api/alerts/subscriptions", body)).Status);
        Assert.Equal(200, (await _host.Post("/api/alerts/subscriptions", body)).Status);
        Assert.Equal(1, Channel(await _host.Get("/api/alerts"), "webPush").GetProperty("receivers").GetInt32());
        (int status, JsonElement wrong) = await _host.Post("/api/alerts/subscriptions", body.Replace("https:", "ftp:", StringComparison.Ordinal));
        Assert.Equal((400, "endpoint"), (status, wrong.GetProperty("fields")[0].GetString()));

        await _host.Post("/api/alerts/subscriptions/remove", """{"endpoint":"https://push.example/abc"}""");
        Assert.Equal(0, Channel(await _host.Get("/api/alerts"), "webPush").GetProperty("receivers").GetInt32());
        Assert.Equal(65, Base64Url.Decode((await _host.Get("/api/alerts/push-key")).GetProperty("publicKey").GetString()!).Length);
    }

    [Fact]
    public async Task Job_ThatRuns_IsWatchedWithItsTimers()
    {
        long id = (await _host.Post("/api/jobs", """{"piece":"side table"}""")).Body.GetProperty("id").GetInt64();
        JobsToWatch jobs = _host.Services.GetRequiredService<JobsToWatch>();
        await Eventually.TrueAsync(() => jobs.Jobs is [{ Timers.Count: 0 }], "the job is watched");
        (_, JsonElement job) = await _host.Post($"/api/jobs/{id}/coats", "{}");
        await _host.Post($"/api/coats/{job.GetProperty("coats")[0].GetProperty("id").GetInt64()}/stop", "{}");

        await Eventually.TrueAsync(() => jobs.Jobs is [{ Timers.Count: > 0, Watch: not null }], "its timers and its soft film are watched");
    }

    [Theory]
    [InlineData("/alerts")]
    [InlineData("/alerts.js")]
    [InlineData("/worker.js")]
    [InlineData("/app.webmanifest")]
    [InlineData("/app-icon-192.png")]
    [InlineData("/app-icon-512.png")]
    public async Task File_OfTheApp_IsThere(string address) => Assert.Equal(200, await _host.Status(address));

    [Fact]
    public async Task Worker_HasNoStoreToServeAVerdictFrom() =>
        Assert.DoesNotContain("caches", await _host.Text("/worker.js"), StringComparison.Ordinal);

    private static JsonElement Channel(JsonElement state, string name) =>
        state.GetProperty("channels").EnumerateArray().Single(channel => channel.GetProperty("name").GetString() == name);

    private static JsonElement? Heard(MqttReader reader) =>
        reader.All.FirstOrDefault(message => message.Topic.EndsWith("/alert", StringComparison.Ordinal)) is { } heard ? JsonDocument.Parse(heard.Payload).RootElement : null;

    private async Task<MqttReader> ConnectAsync()
    {
        await Eventually.TrueAsync(() => _host.Services.GetRequiredService<MqttLink>().Connections > 0, "the broker is up");
        return await MqttReader.ConnectAsync(_port);
    }

    private void Begin()
    {
        Episode episode = new("test", AlertKind.VerdictWorse, AlertLevel.Urgent, TimeProvider.System.GetUtcNow(), "Wait", "the dew point has risen", "wait");
        _host.Services.GetRequiredService<AlertStore>().Enter(
            [new(EpisodeStep.Began, episode, "Wait", "f", "a"), new(EpisodeStep.Told, episode with { IsTold = true }, "Wait", "the dew point has risen", "wait")],
            TimeProvider.System.GetUtcNow(),
            [("mqtt", "")]);
        _host.Services.GetRequiredService<AlertDispatcher>().Wake();
    }
}
