using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace BoothWatch.Service.Access;

/// <summary>A certificate with its key and chain, read from two PEM files (RFC 7468).</summary>
/// <param name="Leaf">The certificate of the booth with its private key; null when it could not be read.</param>
/// <param name="Chain">The certificates after it in the file: those of the authorities between.</param>
/// <param name="Problem">Why it could not be read, naming the setting and the fix; null when it could.</param>
internal sealed record CertificateFiles(X509Certificate2? Leaf, X509Certificate2Collection Chain, string? Problem)
{
    private const string CertificateKey = "page:certificateFile";
    private const string PrivateKeyKey = "page:keyFile";

    /// <summary>Reads both files.</summary>
    public static CertificateFiles Read(string certificateFile, string keyFile)
    {
        if (Text(CertificateKey, certificateFile) is not (string certificate, null) || Text(PrivateKeyKey, keyFile) is not (string key, null))
        {
            return Failed(Text(CertificateKey, certificateFile).Problem ?? Text(PrivateKeyKey, keyFile).Problem!);
        }

        if (!PemEncoding.TryFind(certificate, out PemFields found) || !certificate.AsSpan()[found.Label].SequenceEqual("CERTIFICATE"))
        {
            return Failed($"{CertificateKey} is {certificateFile}, which does not begin with a certificate in PEM form; give the file of the full chain, the booth's own certificate first");
        }

        if (key.Contains("ENCRYPTED", StringComparison.Ordinal))
        {
            return Failed($"{PrivateKeyKey} is {keyFile}, whose key is locked with a password; give a key without one, readable by the user of BoothWatch alone");
        }

        try
        {
            X509Certificate2Collection all = [];
            all.ImportFromPem(certificate);
            X509Certificate2 leaf = X509Certificate2.CreateFromPem(certificate, key);
            return new CertificateFiles(leaf, [.. all.Skip(1)], null);
        }
        catch (ArgumentException)
        {
            return Failed($"{PrivateKeyKey} is {keyFile}, whose key does not belong to the certificate in {certificateFile}; give the two files that were made together");
        }
        catch (CryptographicException problem)
        {
            return Failed($"{CertificateKey} is {certificateFile} and {PrivateKeyKey} is {keyFile}, and they cannot be used ({problem.Message}); give a certificate and its private key in PEM form");
        }
    }

    private static CertificateFiles Failed(string problem) => new(null, [], problem);

    private static (string? Text, string? Problem) Text(string setting, string path)
    {
        try
        {
            return (File.ReadAllText(path), null);
        }
        catch (Exception problem) when (problem is FileNotFoundException or DirectoryNotFoundException)
        {
            return (null, $"{setting} is {path}, and there is no such file; give the full path of a PEM file, for example /etc/boothwatch/tls/fullchain.pem");
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            return (null, $"{setting} is {path}, which cannot be read ({problem.Message}); let the user that runs BoothWatch read it");
        }
    }
}
