using System.Net.Security;
using System.Security.Authentication;
using System.Security.Cryptography.X509Certificates;

namespace BoothWatch.Service.Access;

/// <summary>
/// The certificate that the page shows over TLS. It looks at its two files at every handshake and takes a renewed pair at once; a pair
/// that cannot be used is reported, and the one before stays.
/// </summary>
internal sealed partial class ServerCertificate
{
    /// <summary>It asks to be renewed when less than this is left, or a sixth of its life if that is less.</summary>
    private static readonly TimeSpan SoonExpired = TimeSpan.FromDays(14);

    private sealed record Loaded(string Stamp, SslServerAuthenticationOptions Handshake, X509Certificate2 Leaf);

    private readonly string _certificateFile;
    private readonly string _keyFile;
    private readonly TimeProvider _time;
    private readonly ILogger<ServerCertificate> _logger;
    private readonly Lock _gate = new();
    private Loaded? _loaded;
    private string _refusedStamp = "";
    private string? _problem;

    /// <summary>Names the files; both empty when the page is served without TLS.</summary>
    public ServerCertificate(string certificateFile, string keyFile, TimeProvider time, ILogger<ServerCertificate> logger)
    {
        (_certificateFile, _keyFile, _time, _logger) = (certificateFile, keyFile, time, logger);
    }

    /// <summary>Whether the page is served over TLS.</summary>
    public bool IsUsed => _certificateFile.Length > 0;

    /// <summary>How it fares; null when the page is served without TLS.</summary>
    public CertificateFinding? Finding
    {
        get
        {
            if (!IsUsed)
            {
                return null;
            }

            Loaded? loaded = Refresh();
            if (loaded is null || _problem is not null)
            {
                return new CertificateFinding(false, _problem ?? "no certificate");
            }

            DateTimeOffset end = loaded.Leaf.NotAfter.ToUniversalTime();
            TimeSpan left = end - _time.GetUtcNow();
            TimeSpan soon = (loaded.Leaf.NotAfter - loaded.Leaf.NotBefore) / 6;
            string day = $"{end:yyyy-MM-dd}";
            return left <= TimeSpan.Zero ? new CertificateFinding(false, $"expired on {day}: browsers refuse the page; renew it")
                : left < (soon < SoonExpired ? soon : SoonExpired) ? new CertificateFinding(false, $"expires on {day}; renew it")
                : new CertificateFinding(true, $"good until {day}");
        }
    }

    /// <summary>What a handshake uses now: TLS 1.2 at least, the whole chain sent along.</summary>
    /// <exception cref="AuthenticationException">There is no certificate that can be used.</exception>
    public SslServerAuthenticationOptions Handshake() => Refresh()?.Handshake ?? throw new AuthenticationException(_problem);

    /// <summary>Whether the certificate names a host.</summary>
    public bool Covers(string host) => IsUsed && host.Length > 0 && Refresh()?.Leaf.MatchesHostname(host) == true;

    private Loaded? Refresh()
    {
        lock (_gate)
        {
            string stamp = $"{StampOf(_certificateFile)} {StampOf(_keyFile)}";
            if (stamp == _loaded?.Stamp)
            {
                // A pair that was refused in between is gone again.
                (_problem, _refusedStamp) = (null, "");
                return _loaded;
            }

            if (stamp == _refusedStamp)
            {
                return _loaded;
            }

            CertificateFiles files = CertificateFiles.Read(_certificateFile, _keyFile);
            _problem = files.Problem;
            if (files.Leaf is null)
            {
                _refusedStamp = stamp;
                LogRefused(files.Problem!);
                return _loaded;
            }

            // The pair before may still be in the middle of a handshake, so the collector ends it.
            _loaded = new Loaded(stamp, HandshakeOf(files), files.Leaf);
            LogTaken(files.Leaf.Subject, files.Leaf.NotAfter.ToUniversalTime());
            return _loaded;
        }
    }

    private static SslServerAuthenticationOptions HandshakeOf(CertificateFiles files) => new()
    {
        ServerCertificateContext = SslStreamCertificateContext.Create(files.Leaf!, files.Chain, offline: true),
        EnabledSslProtocols = SslProtocols.Tls12 | SslProtocols.Tls13,
    };

    // Through a symbolic link, which is how many clients of certificate authorities swap a pair.
    private static string StampOf(string path)
    {
        try
        {
            FileSystemInfo file = new FileInfo(path).ResolveLinkTarget(returnFinalTarget: true) ?? new FileInfo(path);
            return file is FileInfo { Exists: true } there ? $"{there.FullName}:{there.LastWriteTimeUtc.Ticks}:{there.Length}" : "none";
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            return "unreadable";
        }
    }

    [LoggerMessage(1, LogLevel.Information, "The page shows the certificate of {Subject}, good until {End:u}")]
    private partial void LogTaken(string subject, DateTime end);

    [LoggerMessage(2, LogLevel.Warning, "The certificate files have changed and cannot be used: {Problem}")]
    private partial void LogRefused(string problem);
}
