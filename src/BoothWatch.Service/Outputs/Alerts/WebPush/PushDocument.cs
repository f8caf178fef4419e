using BoothWatch.Alerts;

namespace BoothWatch.Service.Outputs.Alerts.WebPush;

/// <summary>What a phone is sent, encrypted.</summary>
/// <param name="Id">Id of the message.</param>
/// <param name="Alert">Id of the alert.</param>
/// <param name="Type">alert, clear or test.</param>
/// <param name="Level">notice, warning or urgent.</param>
/// <param name="Title">The message in a few words.</param>
/// <param name="Body">What was found and what to do.</param>
/// <param name="Place">Shop and booth.</param>
/// <param name="Tag">A notification of the same tag is replaced.</param>
/// <param name="Time">When it was written, RFC 3339.</param>
/// <param name="Expires">When it is no news any more, RFC 3339.</param>
/// <param name="Acknowledge">Token that acknowledges this alert; null where there is nothing to acknowledge.</param>
internal sealed record PushDocument(
    string Id,
    string Alert,
    AlertMessageType Type,
    AlertLevel Level,
    string Title,
    string Body,
    string Place,
    string Tag,
    DateTimeOffset Time,
    DateTimeOffset Expires,
    string? Acknowledge);
