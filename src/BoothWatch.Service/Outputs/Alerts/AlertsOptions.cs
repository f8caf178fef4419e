using BoothWatch.Service.Outputs.Alerts.Email;
using BoothWatch.Service.Outputs.Alerts.Mqtt;
using BoothWatch.Service.Outputs.Alerts.Webhook;
using BoothWatch.Service.Outputs.Alerts.WebPush;

namespace BoothWatch.Service.Outputs.Alerts;

/// <summary>When alerts are sent and by which ways, section <c>alerts</c> of config/boothwatch.json.</summary>
public sealed class AlertsOptions
{
    /// <summary>Section of the configuration.</summary>
    public const string Section = "alerts";

    /// <summary>True: alerts are watched for. Default true.</summary>
    public bool Enabled { get; set; } = true;

    /// <summary>Address under which phones and mail readers reach the page, for links in messages, for example <c>https://booth.lan:5443</c>. Default empty: no links.</summary>
    public string PageUrl { get; set; } = "";

    /// <summary>How long a session of spraying lasts after its last sign, min. Default 30, range 1 to 240.</summary>
    public double SessionMinutes { get; set; } = 30;

    /// <summary>The margin closes fast when a straight line leaves less than this, min. Default 15, range 1 to 120.</summary>
    public double MarginMinutesLeft { get; set; } = 15;

    /// <summary>The time over which that line is laid, min. Default 10, range 2 to 60.</summary>
    public double MarginWindowMinutes { get; set; } = 10;

    /// <summary>How long a sensor must be silent outside a session before it counts as lost, s. Default 60, range 10 to 3600.</summary>
    public double SensorsLostAfterS { get; set; } = 60;

    /// <summary>How long all must be well, without a break, before the all-clear, s. Default 120, range 10 to 3600.</summary>
    public double ClearAfterS { get; set; } = 120;

    /// <summary>True: it is told when a piece that was too cold has become warm enough. Default false.</summary>
    public bool PieceWarm { get; set; }

    /// <summary>When nobody wants to be disturbed.</summary>
    public QuietHoursOptions QuietHours { get; set; } = new();

    /// <summary>Web Push to phones and browsers.</summary>
    public WebPushOptions WebPush { get; set; } = new();

    /// <summary>E-mail.</summary>
    public EmailOptions Email { get; set; } = new();

    /// <summary>A signed request to a server of the shop's own.</summary>
    public WebhookOptions Webhook { get; set; } = new();

    /// <summary>MQTT.</summary>
    public AlertMqttOptions Mqtt { get; set; } = new();
}
