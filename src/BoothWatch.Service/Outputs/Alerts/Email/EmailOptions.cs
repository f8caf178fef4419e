namespace BoothWatch.Service.Outputs.Alerts.Email;

/// <summary>E-mail by SMTP submission, <c>alerts:email</c>.</summary>
public sealed class EmailOptions
{
    /// <summary><see cref="Security"/>: TLS begins after a greeting in the clear (RFC 6409), and the server must offer it.</summary>
    public const string StartTls = "startTls";

    /// <summary><see cref="Security"/>: TLS from the first byte (RFC 8314).</summary>
    public const string Tls = "tls";

    /// <summary><see cref="Security"/>: none; only for a server on this machine.</summary>
    public const string None = "none";

    /// <summary>Name or address of the submission server. Default empty: no e-mail.</summary>
    public string Host { get; set; } = "";

    /// <summary>Its port. Default 587 (465 is usual with tls), range 1 to 65535.</summary>
    public int Port { get; set; } = 587;

    /// <summary>startTls, tls or none. Default startTls.</summary>
    public string Security { get; set; } = StartTls;

    /// <summary>File of the certificate authority of the server, PEM. Default empty: those of the system.</summary>
    public string CaFile { get; set; } = "";

    /// <summary>User name. Default empty: no sign-in.</summary>
    public string User { get; set; } = "";

    /// <summary>File whose first line is the password. Default empty: see <see cref="Password"/>.</summary>
    public string PasswordFile { get; set; } = "";

    /// <summary>The password itself, meant for the environment variable <c>BOOTHWATCH_alerts__email__password</c>. Default empty. Never logged.</summary>
    public string Password { get; set; } = "";

    /// <summary>Address that messages come from. Default empty; needed with a host.</summary>
    public string From { get; set; } = "";

    /// <summary>Addresses that messages go to, a mail each. Default none; 1 to 20 are needed with a host.</summary>
    public string[] To { get; set; } = [];

    /// <summary>True when there is a server to send by.</summary>
    internal bool IsOn => Host.Length > 0;
}
