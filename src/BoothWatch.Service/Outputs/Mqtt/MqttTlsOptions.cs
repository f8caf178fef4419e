namespace BoothWatch.Service.Outputs.Mqtt;

/// <summary>TLS to an external broker. Files are read at every connect, so renewed certificates are taken up by themselves.</summary>
public sealed class MqttTlsOptions
{
    /// <summary>True to use TLS. Default false.</summary>
    public bool Enabled { get; set; }

    /// <summary>PEM file of the certificate authority that the broker's certificate must come from. Default empty: those of the system.</summary>
    public string CaFile { get; set; } = "";

    /// <summary>PEM file of our own certificate, for brokers that ask for one. Default empty: none.</summary>
    public string CertificateFile { get; set; } = "";

    /// <summary>PEM file of the private key of our certificate. Default empty: none.</summary>
    public string KeyFile { get; set; } = "";
}
