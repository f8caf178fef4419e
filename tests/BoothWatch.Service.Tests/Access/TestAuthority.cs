using System.Net;
using System.Net.Security;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace BoothWatch.Service.Tests.Access;

/// <summary>A private certificate authority with one authority between, as a shop's own may have.</summary>
internal sealed class TestAuthority : IDisposable
{
    private readonly X509Certificate2 _root;
    private readonly X509Certificate2 _between;
    private readonly DateTimeOffset _now;

    public TestAuthority(DateTimeOffset now)
    {
        _now = now;
        using ECDsa rootKey = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        _root = Authority("CN=Test root", rootKey).CreateSelfSigned(now.AddYears(-1), now.AddYears(10));
        using ECDsa betweenKey = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        using X509Certificate2 bare = Authority("CN=Test between", betweenKey).Create(_root, now.AddYears(-1), now.AddYears(5), [1]);
        _between = bare.CopyWithPrivateKey(betweenKey);
    }

    /// <summary>Writes a certificate with its chain, and its key.</summary>
    public void Write(string certificateFile, string keyFile, string name, TimeSpan age, TimeSpan left)
    {
        using ECDsa key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        CertificateRequest request = new("CN=" + name, key, HashAlgorithmName.SHA256);
        SubjectAlternativeNameBuilder names = new();
        names.AddDnsName(name);
        names.AddIpAddress(IPAddress.Loopback);
        request.CertificateExtensions.Add(names.Build());
        using X509Certificate2 leaf = request.Create(_between, _now - age, _now + left, RandomNumberGenerator.GetBytes(8));
        File.WriteAllText(certificateFile, leaf.ExportCertificatePem() + "\n" + _between.ExportCertificatePem() + "\n");
        File.WriteAllText(keyFile, key.ExportPkcs8PrivateKeyPem());
    }

    /// <summary>A client that knows the root alone, and notes the certificate that it is shown.</summary>
    public HttpClient Client(Action<X509Certificate2>? shown = null) => new(new SocketsHttpHandler
    {
        UseCookies = false,
        PooledConnectionLifetime = TimeSpan.Zero,
        SslOptions = new SslClientAuthenticationOptions
        {
            CertificateChainPolicy = new X509ChainPolicy { TrustMode = X509ChainTrustMode.CustomRootTrust, CustomTrustStore = { _root }, RevocationMode = X509RevocationMode.NoCheck },
            RemoteCertificateValidationCallback = (_, certificate, _, errors) =>
            {
                if (certificate is X509Certificate2 leaf)
                {
                    shown?.Invoke(leaf);
                }

                // Which name was asked for is the matter of a test; the chain must hold.
                return (errors & ~SslPolicyErrors.RemoteCertificateNameMismatch) == SslPolicyErrors.None;
            },
        },
    })
    {
        DefaultRequestVersion = HttpVersion.Version20,
        DefaultVersionPolicy = HttpVersionPolicy.RequestVersionOrLower,
    };

    public void Dispose()
    {
        _root.Dispose();
        _between.Dispose();
    }

    private static CertificateRequest Authority(string name, ECDsa key)
    {
        CertificateRequest request = new(name, key, HashAlgorithmName.SHA256);
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(true, false, 0, true));
        request.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.KeyCertSign, true));
        request.CertificateExtensions.Add(new X509SubjectKeyIdentifierExtension(request.PublicKey, false));
        return request;
    }
}
