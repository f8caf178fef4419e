using System.Net.Security;
using System.Security.Cryptography.X509Certificates;

namespace BoothWatch.Service.Outputs;

/// <summary>Whether the certificate of a server may be believed when the shop has its own certificate authority.</summary>
internal static class AuthorityTrust
{
    /// <summary>
    /// True when the certificate is for the name we connected to and comes from <paramref name="authorities"/>, and no other.
    /// Revocation is not asked: an authority of a shop publishes no list.
    /// </summary>
    public static bool IsTrusted(X509Certificate2 certificate, SslPolicyErrors errors, X509Certificate2Collection authorities)
    {
        if ((errors & ~SslPolicyErrors.RemoteCertificateChainErrors) != SslPolicyErrors.None)
        {
            return false;
        }

        using var chain = new X509Chain();
        chain.ChainPolicy.TrustMode = X509ChainTrustMode.CustomRootTrust;
        chain.ChainPolicy.CustomTrustStore.AddRange(authorities);
        chain.ChainPolicy.RevocationMode = X509RevocationMode.NoCheck;
        chain.ChainPolicy.DisableCertificateDownloads = true;
        return chain.Build(certificate);
    }
}
