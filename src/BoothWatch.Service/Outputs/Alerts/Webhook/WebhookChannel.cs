using System.Globalization;
using System.Net.Http.Headers;
using System.Text.Json;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Outputs.Alerts.Webhook;

/// <summary>Posts messages, signed, to a server of the shop's own. Every answer of 200 to 299 counts as taken.</summary>
internal sealed class WebhookChannel(HttpClient http, AlertLinks links, IOptions<AlertsOptions> options, TimeProvider time) : IAlertChannel
{
    private readonly WebhookOptions _options = options.Value.Webhook;

    public string Name => "webhook";

    public string? OffBecause => _options.IsOn ? null : "no address is set: alerts:webhook:url";

    public IReadOnlyList<string> Targets() => [""];

    public async Task SendAsync(string target, AlertMessage message, CancellationToken cancellationToken)
    {
        byte[] key = WebhookSignature.KeyOf(SecretFile.Read(_options.SecretFile, _options.Secret))
            ?? throw new AlertDeliveryException("the secret is no base64 of 24 to 64 bytes: check alerts:webhook:secretFile");
        byte[] body = JsonSerializer.SerializeToUtf8Bytes(WebhookDocument.Of(message, links.Acknowledge(message)), AlertJson.Options);
        long seconds = time.GetUtcNow().ToUnixTimeSeconds();
        using var request = new HttpRequestMessage(HttpMethod.Post, _options.Url) { Content = new ByteArrayContent(body) };
        request.Content.Headers.ContentType = new MediaTypeHeaderValue("application/json");
        request.Headers.Add("webhook-id", message.Id);
        request.Headers.Add("webhook-timestamp", seconds.ToString(CultureInfo.InvariantCulture));
        request.Headers.Add("webhook-signature", WebhookSignature.Sign(key, message.Id, seconds, body));
        try
        {
            using HttpResponseMessage answer = await http.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, cancellationToken);
            if (!answer.IsSuccessStatusCode)
            {
                throw new AlertDeliveryException($"the receiver answered {HttpDelivery.Words(answer.StatusCode)}")
                {
                    RetryAfter = HttpDelivery.RetryAfter(answer.Headers, time.GetUtcNow()),
                };
            }
        }
        catch (HttpRequestException e)
        {
            throw HttpDelivery.Of(e, "the receiver cannot be reached");
        }
    }
}
