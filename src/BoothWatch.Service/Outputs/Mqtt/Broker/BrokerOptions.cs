namespace BoothWatch.Service.Outputs.Mqtt.Broker;

/// <summary>The broker inside this process.</summary>
public sealed class BrokerOptions
{
    /// <summary>Numeric address of this machine to listen on. Default 127.0.0.1: reached from this machine only. Any other needs a user.</summary>
    public string Address { get; set; } = "127.0.0.1";

    /// <summary>Port. Default 1883; 1 to 65535.</summary>
    public int Port { get; set; } = 1883;

    /// <summary>User name that clients must give. Default empty: none asked for.</summary>
    public string User { get; set; } = "";

    /// <summary>File whose first line is the password that clients must give. Default empty.</summary>
    public string PasswordFile { get; set; } = "";
}
