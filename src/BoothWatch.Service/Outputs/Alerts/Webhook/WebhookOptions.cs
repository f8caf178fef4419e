namespace BoothWatch.Service.Outputs.Alerts.Webhook;

/// <summary>A signed webhook, <c>alerts:webhook</c>.</summary>
public sealed class WebhookOptions
{
    /// <summary>Address that is posted to, https://... or http://... Default empty: no webhook.</summary>
    public string Url { get; set; } = "";

    /// <summary>File whose first line is the secret that both sides know. Default empty: see <see cref="Secret"/>.</summary>
    public string SecretFile { get; set; } = "";

    /// <summary>The secret itself: base64 of 24 to 64 random bytes, with or without <c>whsec_</c> before it; meant for the environment variable <c>BOOTHWATCH_alerts__webhook__secret</c>. Default empty. Never logged.</summary>
    public string Secret { get; set; } = "";

    /// <summary>True when there is somewhere to post to.</summary>
    internal bool IsOn => Url.Length > 0;
}
