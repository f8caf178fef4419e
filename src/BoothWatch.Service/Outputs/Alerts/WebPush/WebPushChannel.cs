using System.Globalization;
using System.Net;
using System.Security.Cryptography;
using System.Text.Json;
using BoothWatch.Alerts;
using Lib.Net.Http.WebPush;
using Lib.Net.Http.WebPush.Authentication;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Outputs.Alerts.WebPush;

/// <summary>
/// Web Push (RFC 8030), encrypted for the one browser (RFC 8291) and signed with the key of this service (VAPID, RFC 8292). A message of
/// the same key takes the place of one that the phone has not fetched yet, and the push service drops it when it is no news any more.
/// A subscription that the push service no longer knows is removed.
/// </summary>
internal sealed class WebPushChannel : IAlertChannel, IDisposable
{
    // With zero a push service drops what the phone cannot take at once (RFC 8030, 5.2). Own choice.
    private const int LeastTimeToLiveS = 60;

    private readonly PhoneBook _phones;
    private readonly AlertKeys _keys;
    private readonly AcknowledgeTokens _tokens;
    private readonly WebPushOptions _options;
    private readonly TimeProvider _time;

    // Made at the first message: a shop without phones never loads the library of Web Push.
    private readonly Lazy<HttpClient> _http;

    public WebPushChannel(PhoneBook phones, AlertKeys keys, AcknowledgeTokens tokens, IOptions<AlertsOptions> options, TimeProvider time)
    {
        (_phones, _keys, _tokens, _options, _time) = (phones, keys, tokens, options.Value.WebPush, time);
        _http = new Lazy<HttpClient>(() => HttpDelivery.Client(new VapidOrigin(Sender) { InnerHandler = HttpDelivery.Handler() }));
    }

    public string Name => "webPush";

    public string? OffBecause => _options.Enabled ? null : "it is switched off: alerts:webPush:enabled";

    public IReadOnlyList<string> Targets() => [.. _phones.All().Select(phone => phone.Id.ToString(CultureInfo.InvariantCulture))];

    public async Task SendAsync(string target, AlertMessage message, CancellationToken cancellationToken)
    {
        PhoneSubscription phone = _phones.Find(target) ?? throw new AlertDeliveryException("the phone has unsubscribed") { IsFinal = true };
        var subscription = new PushSubscription { Endpoint = phone.Endpoint };
        subscription.SetKey(PushEncryptionKeyName.P256DH, phone.P256dh);
        subscription.SetKey(PushEncryptionKeyName.Auth, phone.Auth);
        using var content = new ByteArrayContent(JsonSerializer.SerializeToUtf8Bytes(DocumentOf(message), AlertJson.Options));
        var push = new PushMessage(content)
        {
            Topic = message.Topic,
            TimeToLive = Math.Max(LeastTimeToLiveS, (int)Math.Ceiling(message.LeftAt(_time.GetUtcNow()).TotalSeconds)),
            Urgency = message.Level == AlertLevel.Urgent || message.Type == AlertMessageType.Test ? PushMessageUrgency.High : PushMessageUrgency.Normal,
        };
        try
        {
            using VapidAuthentication sender = Sender();
            var client = new PushServiceClient(_http.Value) { AutoRetryAfter = false };
            await client.RequestPushMessageDeliveryAsync(subscription, push, sender, VapidAuthenticationScheme.Vapid, cancellationToken);
        }
        catch (PushServiceClientException e)
        {
            throw Refusal(e, phone);
        }
        catch (HttpRequestException e)
        {
            throw HttpDelivery.Of(e, "the push service cannot be reached");
        }
        catch (CryptographicException e)
        {
            throw new AlertDeliveryException($"the keys of {phone.Name} cannot be used: let it subscribe again", e) { IsFinal = true };
        }
    }

    public void Dispose()
    {
        if (_http.IsValueCreated)
        {
            _http.Value.Dispose();
        }
    }

    private VapidAuthentication Sender()
    {
        var sender = new VapidAuthentication(_keys.VapidPublic, _keys.VapidPrivate);
        if (_options.Contact.Length > 0)
        {
            sender.Subject = _options.Contact;
        }

        return sender;
    }

    private AlertDeliveryException Refusal(PushServiceClientException error, PhoneSubscription phone)
    {
        if (error.StatusCode is HttpStatusCode.NotFound or HttpStatusCode.Gone)
        {
            _phones.Remove(phone.Endpoint);
            return new AlertDeliveryException($"{phone.Name} has unsubscribed at its push service and was removed", error) { IsFinal = true };
        }

        string why = $"the push service of {phone.Name} answered {HttpDelivery.Words(error.StatusCode)}";
        string hint = error.StatusCode switch
        {
            HttpStatusCode.Unauthorized or HttpStatusCode.Forbidden => ": set alerts:webPush:contact, or let the phone subscribe again",
            _ => "",
        };
        return new AlertDeliveryException(why + hint, error)
        {
            IsFinal = error.StatusCode is HttpStatusCode.BadRequest or HttpStatusCode.RequestEntityTooLarge,
            RetryAfter = error.Headers is null ? null : HttpDelivery.RetryAfter(error.Headers, _time.GetUtcNow()),
        };
    }

    private PushDocument DocumentOf(AlertMessage message) => new(
        message.Id,
        message.Alert,
        message.Type,
        message.Level,
        message.Title,
        message.Text,
        $"{message.Shop}, {message.Booth}",
        message.Topic,
        message.Time,
        message.Expires,
        message.Type == AlertMessageType.Alert ? _tokens.Of(message.Alert) : null);
}
