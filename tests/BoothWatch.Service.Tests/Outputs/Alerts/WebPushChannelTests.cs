using System.Globalization;
using System.Net;
using System.Text.Json;
using BoothWatch.Alerts;
using BoothWatch.Service.Outputs.Alerts;
using BoothWatch.Service.Outputs.Alerts.WebPush;

namespace BoothWatch.Service.Tests.Outputs.Alerts;

/// <summary>Web Push against a push service that checks what one checks, and a phone that decrypts with its own key.</summary>
public sealed class WebPushChannelTests : IAsyncLifetime
{
    private readonly AlertBench _bench = new(new AlertsOptions { WebPush = { Contact = "mailto:office@harbour-lane.example" } });
    private readonly PushDecrypter _phone = new();
    private Receiver _service = null!;

    public async Task InitializeAsync() => _service = await Receiver.StartAsync();

    public async Task DisposeAsync()
    {
        await _service.DisposeAsync();
        _phone.Dispose();
        _bench.Dispose();
    }

    [Fact]
    public async Task Message_ArrivesEncryptedForThePhoneAndSignedByTheBooth()
    {
        AlertMessage message = _bench.Message();
        await _bench.WebPush().SendAsync(Subscribe("/push/one"), message, CancellationToken.None);

        Receiver.Letter letter = Assert.Single(_service.Letters);
        Assert.Equal(("POST", "/push/one", "aes128gcm"), (letter.Method, letter.Path, letter["Content-Encoding"]));
        JsonElement claims = VapidCheck.ClaimsOf(letter["Authorization"], _bench.Keys.VapidPublic);

        // RFC 8292, 2: the origin of the push service, an expiry at most 24 h ahead, and a contact.
        Assert.Equal(_service.Origin, claims.GetProperty("aud").GetString()!.TrimEnd('/'));
        long now = TimeProvider.System.GetUtcNow().ToUnixTimeSeconds();
        Assert.InRange(claims.GetProperty("exp").GetInt64(), now + 60, now + 86_400);
        Assert.Equal("mailto:office@harbour-lane.example", claims.GetProperty("sub").GetString());

        // RFC 8030, 5.2 to 5.4.
        Assert.Equal(("600", "high"), (letter["TTL"], letter["Urgency"]));
        Assert.Matches("^[A-Za-z0-9_-]{1,32}$", letter["Topic"]);

        JsonElement document = JsonDocument.Parse(_phone.DecryptText(letter.Body)).RootElement;
        Assert.Equal((message.Id, "alert", "Wait"), (document.GetProperty("id").GetString(), document.GetProperty("type").GetString(), document.GetProperty("title").GetString()));
        Assert.Contains("17.8 °C", document.GetProperty("body").GetString(), StringComparison.Ordinal);
        Assert.Equal(message.Alert, _bench.Tokens.AlertOf(document.GetProperty("acknowledge").GetString()));
    }

    [Fact]
    public async Task AllClear_HasTheTopicAndTagOfItsAlert_SoThatItReplacesIt()
    {
        string target = Subscribe("/push/one");
        await _bench.WebPush().SendAsync(target, _bench.Message(), CancellationToken.None);
        await _bench.WebPush().SendAsync(target, _bench.Message(AlertMessageType.Clear, level: AlertLevel.Notice), CancellationToken.None);
        await _bench.WebPush().SendAsync(target, _bench.Message(key: "sensors"), CancellationToken.None);

        Receiver.Letter[] letters = [.. _service.Letters];
        Assert.Equal(letters[0]["Topic"], letters[1]["Topic"]);
        Assert.NotEqual(letters[0]["Topic"], letters[2]["Topic"]);

        // RFC 8030, 5.3: without the header the urgency is normal.
        Assert.Contains(letters[1]["Urgency"], (string[])["", "normal"]);
        Assert.All(letters, letter => Assert.Equal(letter["Topic"], JsonDocument.Parse(_phone.DecryptText(letter.Body)).RootElement.GetProperty("tag").GetString()));
    }

    [Theory]
    [InlineData(HttpStatusCode.Gone)]
    [InlineData(HttpStatusCode.NotFound)]
    public async Task Subscription_ThatThePushServiceNoLongerKnows_IsRemoved(HttpStatusCode status)
    {
        _service.Answer = path => path == "/push/old" ? status : HttpStatusCode.Created;
        Subscribe("/push/old");
        Subscribe("/push/new");
        WebPushChannel channel = _bench.WebPush();
        using AlertDispatcher dispatcher = _bench.Dispatcher(channel);
        _bench.Store.Enter(Told("verdict"), _bench.Time.GetUtcNow(), [.. channel.Targets().Select(target => (channel.Name, target))]);
        await AlertBench.RoundAsync(dispatcher);

        Assert.Equal(["webPush alert refused", "webPush alert delivered"], _bench.Rows());
        Assert.EndsWith("/push/new", Assert.Single(_bench.Phones.All()).Endpoint, StringComparison.Ordinal);
        Assert.Equal(2, _service.Letters.Count);
    }

    [Fact]
    public async Task PushService_ThatIsBusy_IsAskedAgainWhenItWants()
    {
        _service.Answer = _ => HttpStatusCode.TooManyRequests;
        _service.RetryAfter = "120";
        string target = Subscribe("/push/one");

        AlertDeliveryException refusal = await Assert.ThrowsAsync<AlertDeliveryException>(() => _bench.WebPush().SendAsync(target, _bench.Message(), CancellationToken.None));

        Assert.Equal((false, false, TimeSpan.FromSeconds(120)), (refusal.IsFinal, refusal.MayHaveArrived, refusal.RetryAfter));
        Assert.Single(_bench.Phones.All());
    }

    [Fact]
    public async Task Phone_WhosePushServiceHangs_DelaysNoOther()
    {
        _service.Held["/push/slow"] = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        Subscribe("/push/slow");
        Subscribe("/push/quick");
        WebPushChannel channel = _bench.WebPush();
        using AlertDispatcher dispatcher = _bench.Dispatcher(channel);
        _bench.Store.Enter(Told("verdict"), _bench.Time.GetUtcNow(), [.. channel.Targets().Select(target => (channel.Name, target))]);
        dispatcher.Round();

        await Mqtt.Eventually.TrueAsync(() => _bench.Rows().Contains("webPush alert delivered"), "the quick phone has it");
        Assert.Contains("webPush alert sending", _bench.Rows());
        _service.Held["/push/slow"].SetResult();
        await dispatcher.IdleAsync();
    }

    [Fact]
    public async Task TimeToLive_AfterTheClockWasSetFarAhead_IsWhatIsLeftByTheMonotonicClock()
    {
        SteppedClock clock = new(_bench.Time);
        using WebPushChannel channel = new(_bench.Phones, _bench.Keys, _bench.Tokens, _bench.Options, clock);
        using AlertDispatcher dispatcher = _bench.Dispatcher(clock, channel);
        _bench.Store.Enter(Told("verdict"), _bench.Time.GetUtcNow(), [(channel.Name, Subscribe("/push/one"))]);
        _service.Answer = _ => HttpStatusCode.ServiceUnavailable;
        await AlertBench.RoundAsync(dispatcher);
        _service.Answer = _ => HttpStatusCode.Created;
        clock.Step = TimeSpan.FromDays(365);
        _bench.Time.Advance(TimeSpan.FromSeconds(200));
        await AlertBench.RoundAsync(dispatcher);

        // A verdict is news for 600 s.
        Assert.Equal(["600", "400"], _service.Letters.Select(letter => letter["TTL"]));
    }

    [Fact]
    public async Task TimeToLive_IsNeverSoShortThatAPhoneMustBeConnected()
    {
        await _bench.WebPush().SendAsync(Subscribe("/push/one"), _bench.Message() with { Left = TimeSpan.FromSeconds(2) }, CancellationToken.None);

        Assert.Equal("60", Assert.Single(_service.Letters)["TTL"]);
    }

    [Fact]
    public void Keys_AreMadeOnceAndForTheServiceAlone()
    {
        string publicKey = _bench.Keys.VapidPublic;
        AlertKeys again = new(_bench.Options, _bench.Sources);

        Assert.Equal((publicKey, _bench.Keys.VapidPrivate), (again.VapidPublic, again.VapidPrivate));
        Assert.Equal(65, Base64Url.Decode(publicKey).Length);
        if (!OperatingSystem.IsWindows())
        {
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(again.Path));
        }
    }

    [Theory]
    [InlineData("http://push.example/abc", null, null, "endpoint")]
    [InlineData("https://user@push.example/abc", null, null, "endpoint")]
    [InlineData("file:///etc/passwd", null, null, "endpoint")]
    [InlineData(null, "BCVx", null, "p256dh")]
    [InlineData(null, null, "BTBZ", "auth")]
    [InlineData(null, null, null, null)]
    public void Subscription_ThatCannotBeOne_IsRefusedByField(string? endpoint, string? p256dh, string? auth, string? field) => Assert.Equal(
        field,
        PhoneBook.Check(endpoint ?? "https://push.example/abc", p256dh ?? Base64Url.Encode(_phone.PublicKey), auth ?? Base64Url.Encode(_phone.Auth))?.Field);

    private static EpisodeChange[] Told(string key)
    {
        Episode episode = new(key, AlertKind.VerdictWorse, AlertLevel.Urgent, DateTimeOffset.UnixEpoch, "Wait", "f", "a");
        return [new(EpisodeStep.Began, episode, "Wait", "f", "a"), new(EpisodeStep.Told, episode with { IsTold = true }, "Wait", "f", "a")];
    }

    private string Subscribe(string path) => _bench.Phones.Add(
        _service.Origin + path, Base64Url.Encode(_phone.PublicKey), Base64Url.Encode(_phone.Auth), "phone at the bench", _bench.Time.GetUtcNow())!.ToString(CultureInfo.InvariantCulture);
}
