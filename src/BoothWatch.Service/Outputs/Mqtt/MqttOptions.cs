using BoothWatch.Service.Outputs.Mqtt.Broker;

namespace BoothWatch.Service.Outputs.Mqtt;

/// <summary>How the booth publishes by MQTT 5, section <c>mqtt</c> of config/boothwatch.json.</summary>
public sealed class MqttOptions
{
    /// <summary>Section of the configuration.</summary>
    public const string Section = "mqtt";

    /// <summary><see cref="Use"/>: a broker inside this process.</summary>
    public const string Embedded = "embedded";

    /// <summary><see cref="Use"/>: the shop's own broker.</summary>
    public const string External = "external";

    /// <summary><see cref="Use"/>: no MQTT at all.</summary>
    public const string Off = "off";

    /// <summary>Which broker: embedded, external or off. Default embedded.</summary>
    public string Use { get; set; } = Embedded;

    /// <summary>The broker inside this process.</summary>
    public BrokerOptions Broker { get; set; } = new();

    /// <summary>external: name or address of the broker. Default localhost.</summary>
    public string Host { get; set; } = "localhost";

    /// <summary>external: its port. Default 1883 (8883 is usual with TLS); 1 to 65535.</summary>
    public int Port { get; set; } = 1883;

    /// <summary>external: user name. Default empty: none.</summary>
    public string User { get; set; } = "";

    /// <summary>external: file whose first line is the password. Default empty: none.</summary>
    public string PasswordFile { get; set; } = "";

    /// <summary>external: TLS.</summary>
    public MqttTlsOptions Tls { get; set; } = new();

    /// <summary>First level of the Homie topics. Default <c>homie</c>; a to z, 0 to 9 and hyphens.</summary>
    public string HomieRoot { get; set; } = "homie";

    /// <summary>First level of the other topics. Default <c>boothwatch</c>; a to z, 0 to 9 and hyphens.</summary>
    public string Root { get; set; } = "boothwatch";

    /// <summary>Homie device id, one of its own for each booth on a broker; a to z, 0 to 9 and hyphens. Default empty: made of shop and booth.</summary>
    public string DeviceId { get; set; } = "";

    /// <summary>How long the broker keeps a reading that is not renewed, s. Default 60, 5 to 3600. Readings are renewed in a third of it.</summary>
    public int ExpiryS { get; set; } = 60;

    /// <summary>Silence after which the connection is tried with a ping, s. Default 15, 1 to 300.</summary>
    public double KeepAliveS { get; set; } = 15;

    /// <summary>Longest wait for an answer of the broker before the connection counts as dead, s. Default 10, 1 to 60.</summary>
    public double AnswerWithinS { get; set; } = 10;

    /// <summary>How long the broker keeps our session after a lost connection, s. Default 3600, 0 to 86400; at least willDelayS.</summary>
    public int SessionExpiryS { get; set; } = 3600;

    /// <summary>How long after a lost connection the broker says <c>lost</c>, s. Default 10, 0 to 300.</summary>
    public int WillDelayS { get; set; } = 10;

    /// <summary>Wait after the first failed try to connect, s. Default 0.5, 0.1 to 60; doubles with each failure.</summary>
    public double FirstRetryS { get; set; } = 0.5;

    /// <summary>Longest wait between tries, s. Default 30, 0.1 to 600; at least firstRetryS.</summary>
    public double LongestRetryS { get; set; } = 30;
}
