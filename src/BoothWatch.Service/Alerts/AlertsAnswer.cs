using BoothWatch.Service.Outputs.Alerts;

namespace BoothWatch.Service.Alerts;

/// <summary>The present state of alerts.</summary>
/// <param name="Enabled">True while alerts are watched for.</param>
/// <param name="Session">True while somebody is spraying, as far as can be seen.</param>
/// <param name="QuietUntil">When the present quiet hours end, UTC; null outside of them.</param>
/// <param name="Channels">Every channel.</param>
/// <param name="Alerts">The newest alerts, newest first.</param>
public sealed record AlertsAnswer(
    bool Enabled, bool Session, DateTimeOffset? QuietUntil, IReadOnlyList<ChannelLine> Channels, IReadOnlyList<AlertRow> Alerts);
