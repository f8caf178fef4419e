namespace BoothWatch.Service.Outputs.Alerts.WebPush;

/// <summary>Web Push, <c>alerts:webPush</c>.</summary>
public sealed class WebPushOptions
{
    /// <summary>True: phones may subscribe. Default true.</summary>
    public bool Enabled { get; set; } = true;

    /// <summary>File of the keys that the service makes at its first use, readable by it alone. Default empty: <c>alert-keys.json</c> in the folder of the journal.</summary>
    public string KeyFile { get; set; } = "";

    /// <summary>How a push service can reach whoever runs this, <c>mailto:NAME@HOST</c> or <c>https://...</c> (RFC 8292). Default empty: not said; some push services then refuse.</summary>
    public string Contact { get; set; } = "";
}
