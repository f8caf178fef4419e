using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Outputs.Alerts;

/// <summary>Links in messages. The token stands behind the #, which no server and no log ever sees, and opening the link alone does nothing: a mail scanner may follow it.</summary>
internal sealed class AlertLinks(AcknowledgeTokens tokens, IOptions<AlertsOptions> options)
{
    /// <summary>Where a message is acknowledged; null where no address is configured, and for what needs none.</summary>
    public string? Acknowledge(AlertMessage message) =>
        options.Value.PageUrl.Length > 0 && message.Type == AlertMessageType.Alert ? $"{options.Value.PageUrl.TrimEnd('/')}/alerts#acknowledge={tokens.Of(message.Alert)}" : null;
}
