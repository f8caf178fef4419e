using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using BoothWatch.Service.Outputs.Alerts;

namespace BoothWatch.Service.Tests.Outputs.Alerts;

/// <summary>What a push service checks of RFC 8292: a JWT signed with ES256 by the key that the phone subscribed with.</summary>
internal static class VapidCheck
{
    /// <summary>The claims, once the signature has been proved.</summary>
    public static JsonElement ClaimsOf(string authorization, string expectedPublicKey)
    {
        // RFC 8292, 3: Authorization: vapid t=JWT, k=KEY.
        Assert.StartsWith("vapid ", authorization, StringComparison.OrdinalIgnoreCase);
        Dictionary<string, string> parameters = authorization["vapid ".Length..].Split(',', StringSplitOptions.TrimEntries)
            .ToDictionary(part => part[..part.IndexOf('=', StringComparison.Ordinal)], part => part[(part.IndexOf('=', StringComparison.Ordinal) + 1)..]);
        Assert.Equal(expectedPublicKey, parameters["k"]);
        string[] parts = parameters["t"].Split('.');
        JsonElement header = JsonDocument.Parse(Base64Url.Decode(parts[0])).RootElement;
        Assert.Equal(("JWT", "ES256"), (header.GetProperty("typ").GetString(), header.GetProperty("alg").GetString()));

        byte[] point = Base64Url.Decode(parameters["k"]);
        using ECDsa key = ECDsa.Create(new ECParameters
        {
            Curve = ECCurve.NamedCurves.nistP256,
            Q = new ECPoint { X = point[1..33], Y = point[33..] },
        });
        byte[] signature = Base64Url.Decode(parts[2]);
        byte[] signed = Encoding.ASCII.GetBytes($"{parts[0]}.{parts[1]}");
        Assert.True(key.VerifyData(signed, signature, HashAlgorithmName.SHA256, DSASignatureFormat.IeeeP1363FixedFieldConcatenation), "the signature is wrong");
        signed[^1] ^= 1;
        Assert.False(key.VerifyData(signed, signature, HashAlgorithmName.SHA256, DSASignatureFormat.IeeeP1363FixedFieldConcatenation), "the signature covers nothing");
        return JsonDocument.Parse(Base64Url.Decode(parts[1])).RootElement;
    }
}
