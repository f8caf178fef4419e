namespace BoothWatch.Service.Page;

/// <summary>Settings of the status page (<c>page</c> in the configuration).</summary>
public sealed class PageOptions
{
    /// <summary>Name of the section.</summary>
    public const string Section = "page";

    /// <summary>
    /// Address to listen on, <c>http://ADDRESS:PORT</c>, or <c>https://ADDRESS:PORT</c> with a certificate. The default is reached from
    /// this machine only; <c>http://0.0.0.0:5080</c> opens the page to the shop's network. Port 0 picks a free one.
    /// </summary>
    public string Url { get; set; } = "http://127.0.0.1:5080";

    /// <summary>Certificate of the page with its chain, full path of a PEM file; for <c>https</c> only. Default empty. A renewed file is taken without a restart.</summary>
    public string CertificateFile { get; set; } = "";

    /// <summary>Private key of the certificate without a password, full path of a PEM file; for <c>https</c> only. Default empty.</summary>
    public string KeyFile { get; set; } = "";

    /// <summary>Time span of the chart on the page, h. Default 6, range 0.1 to 72. While sensors are emulated the chart begins at the start of the run instead.</summary>
    public double ChartHours { get; set; } = 6;
}
