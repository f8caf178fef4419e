using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace BoothWatch.Service.Tests.Outputs.Mqtt;

/// <summary>A certificate authority of the test's own, with certificates from it as PEM files.</summary>
internal sealed class TestCertificates
{
    private readonly string _folder;
    private readonly X509Certificate2 _authority;

    public TestCertificates(string folder, string name)
    {
        _folder = folder;
        using ECDsa key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        CertificateRequest request = new($"CN={name}", key, HashAlgorithmName.SHA256);
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(true, false, 0, true));
        request.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.KeyCertSign | X509KeyUsageFlags.CrlSign, true));
        request.CertificateExtensions.Add(new X509SubjectKeyIdentifierExtension(request.PublicKey, false));
        _authority = request.CreateSelfSigned(From, Until);
        CaFile = Path.Combine(folder, $"{name}.pem");
        File.WriteAllText(CaFile, _authority.ExportCertificatePem());
    }

    public string CaFile { get; }

    private static DateTimeOffset From => TimeProvider.System.GetUtcNow().AddHours(-1);

    private static DateTimeOffset Until => TimeProvider.System.GetUtcNow().AddDays(2);

    /// <summary>A certificate and its key. For an address it is one of a server.</summary>
    public (string Certificate, string Key) Issue(string name, IPAddress? address = null)
    {
        using ECDsa key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        CertificateRequest request = new($"CN={name}", key, HashAlgorithmName.SHA256);
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(false, false, 0, true));
        request.CertificateExtensions.Add(new X509EnhancedKeyUsageExtension(
            [new Oid(address is null ? "1.3.6.1.5.5.7.3.2" : "1.3.6.1.5.5.7.3.1")], false));
        if (address is not null)
        {
            SubjectAlternativeNameBuilder names = new();
            names.AddIpAddress(address);
            request.CertificateExtensions.Add(names.Build());
        }

        using X509Certificate2 certificate = request.Create(_authority, From.AddMinutes(1), Until.AddDays(-1), RandomNumberGenerator.GetBytes(8));
        (string certificateFile, string keyFile) = (Path.Combine(_folder, $"{name}.crt"), Path.Combine(_folder, $"{name}.key"));
        File.WriteAllText(certificateFile, certificate.ExportCertificatePem());
        File.WriteAllText(keyFile, key.ExportPkcs8PrivateKeyPem());
        return (certificateFile, keyFile);
    }
}
