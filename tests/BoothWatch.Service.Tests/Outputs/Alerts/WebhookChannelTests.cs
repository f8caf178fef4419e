using System.Net;
using System.Text;
using System.Text.Json;
using BoothWatch.Service.Outputs.Alerts;
using BoothWatch.Service.Outputs.Alerts.Webhook;
using Microsoft.AspNetCore.Http;
using StandardWebhooks;

namespace BoothWatch.Service.Tests.Outputs.Alerts;

/// <summary>The webhook against a real receiver; signatures are proved by the reference library of the Standard Webhooks specification.</summary>
public sealed class WebhookChannelTests : IAsyncLifetime
{
    private const string Secret = "whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw";

    private readonly AlertsOptions _options = new() { PageUrl = "https://booth.lan:5443/", Webhook = { Secret = Secret } };
    private AlertBench _bench = null!;
    private Receiver _receiver = null!;

    public async Task InitializeAsync()
    {
        _receiver = await Receiver.StartAsync();
        _options.Webhook.Url = _receiver.Origin + "/hook";
        _bench = new AlertBench(_options);

        // The reference library judges the age of a signature by the clock of this machine.
        _bench.Time.AdjustTime(TimeProvider.System.GetUtcNow());
    }

    public async Task DisposeAsync()
    {
        await _receiver.DisposeAsync();
        _bench.Dispose();
    }

    [Fact]
    public async Task Message_IsSignedSoThatTheReferenceLibraryBelievesIt()
    {
        AlertMessage message = _bench.Message();
        await _bench.Webhook().SendAsync("", message, CancellationToken.None);

        Receiver.Letter letter = Assert.Single(_receiver.Letters);
        string body = Encoding.UTF8.GetString(letter.Body);
        Verify(letter, body);
        Assert.ThrowsAny<Exception>(() => Verify(letter, body.Replace("Wait", "Spray", StringComparison.Ordinal)));
        Assert.Equal((message.Id, "application/json"), (letter["webhook-id"], letter["Content-Type"]));

        JsonElement document = JsonDocument.Parse(body).RootElement;
        Assert.Equal("boothwatch.alert", document.GetProperty("type").GetString());
        Assert.Matches(@"^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?Z$", document.GetProperty("timestamp").GetString());
        JsonElement data = document.GetProperty("data");
        Assert.Equal(("verdict-worse", "urgent", "corner"), (data.GetProperty("kind").GetString(), data.GetProperty("level").GetString(), data.GetProperty("booth").GetString()));
        string link = data.GetProperty("acknowledge").GetString()!;
        Assert.StartsWith("https://booth.lan:5443/alerts#acknowledge=", link, StringComparison.Ordinal);
        Assert.Equal(message.Alert, _bench.Tokens.AlertOf(link[(link.IndexOf('=', StringComparison.Ordinal) + 1)..]));
    }

    /// <summary>The example of the specification (Standard Webhooks, "Signature scheme"; figures as its reference libraries carry them in their tests).</summary>
    [Fact]
    public void Signature_OfTheKnownExample_IsTheKnownOne() => Assert.Equal(
        "v1,g0hM9SsE+OTPJTGt/tmIKtSyZlE3uFJELVlNIOLJ1OE=",
        WebhookSignature.Sign(WebhookSignature.KeyOf(Secret)!, "msg_p5jXN8AQM9LWM0D4loKWxJek", 1614265330, "{\"test\": 2432232314}"u8));

    [Theory]
    [InlineData(HttpStatusCode.InternalServerError)]
    [InlineData(HttpStatusCode.NotFound)]
    [InlineData(HttpStatusCode.Found)]
    public async Task Answer_OtherThan2xx_IsAFailureAndNoRedirectIsFollowed(HttpStatusCode status)
    {
        _receiver.Answer = _ => status;

        AlertDeliveryException failure = await Assert.ThrowsAsync<AlertDeliveryException>(() => _bench.Webhook().SendAsync("", _bench.Message(), CancellationToken.None));

        Assert.Contains(((int)status).ToString(System.Globalization.CultureInfo.InvariantCulture), failure.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(_receiver.Letters, letter => letter.Path == "/elsewhere");
        Assert.False(failure.IsFinal);
    }

    [Fact]
    public async Task Receiver_ThatIsNotThere_HasSurelyNotGotIt()
    {
        await _receiver.DisposeAsync();

        AlertDeliveryException failure = await Assert.ThrowsAsync<AlertDeliveryException>(() => _bench.Webhook().SendAsync("", _bench.Message(), CancellationToken.None));

        Assert.False(failure.MayHaveArrived);
        Assert.DoesNotContain("MfKQ9r8G", failure.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw", true)]
    [InlineData("whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw", true)]
    [InlineData("c2hvcnQ=", false)]
    [InlineData("no base64 at all", false)]
    [InlineData("", false)]
    public void Secret_IsBase64OfEnoughBytes(string secret, bool good) => Assert.Equal(good, WebhookSignature.KeyOf(secret) is not null);

    private static void Verify(Receiver.Letter letter, string body)
    {
        HeaderDictionary headers = [];
        foreach (string name in (string[])["webhook-id", "webhook-timestamp", "webhook-signature"])
        {
            headers[name] = letter[name];
        }

        new StandardWebhook(Secret).Verify(body, headers);
    }
}
