using BoothWatch.Alerts;

namespace BoothWatch.Service.Outputs.Alerts.Webhook;

/// <summary>What is posted.</summary>
/// <param name="Type"><c>boothwatch.alert</c>, <c>boothwatch.clear</c> or <c>boothwatch.test</c>.</param>
/// <param name="Timestamp">When the message was written, RFC 3339.</param>
/// <param name="Data">The message.</param>
internal sealed record WebhookDocument(string Type, DateTimeOffset Timestamp, WebhookDocument.Content Data)
{
    public sealed record Content(
        string Alert,
        string? Kind,
        AlertLevel Level,
        string Shop,
        string Booth,
        string Title,
        string Finding,
        string Action,
        DateTimeOffset Began,
        DateTimeOffset Expires,
        string? Acknowledge);

    public static WebhookDocument Of(AlertMessage message, string? acknowledge) => new(
        $"boothwatch.{message.Type.ToString().ToLowerInvariant()}",
        message.Time,
        new Content(
            message.Alert, message.Kind?.Word(), message.Level, message.Shop, message.Booth, message.Title, message.Finding, message.Action,
            message.Began, message.Expires, acknowledge));
}
