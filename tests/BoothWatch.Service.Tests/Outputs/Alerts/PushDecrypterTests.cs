using System.Security.Cryptography;
using BoothWatch.Service.Outputs.Alerts;

namespace BoothWatch.Service.Tests.Outputs.Alerts;

/// <summary>The decrypter that the other tests lean on, against the worked example of RFC 8291, section 5 and appendix A.</summary>
public class PushDecrypterTests
{
    private const string UserAgentPublic = "BCVxsr7N_eNgVRqvHtD0zTZsEc6-VV-JvLexhqUzORcxaOzi6-AYWXvTBHm4bjyPjs7Vd8pZGH6SRpkNtoIAiw4";
    private const string UserAgentPrivate = "q1dXpw3UpT5VOmu_cf_v6ih07Aems3njxI-JWgLcM94";
    private const string Auth = "BTBZMqHH6r4Tts7J_aSIgg";
    private const string Body =
        "DGv6ra1nlYgDCS1FRnbzlwAAEABBBP4z9KsN6nGRTbVYI_c7VJSPQTBtkgcy27mlmlMoZIIgDll6e3vCYLocInmYWAmS6TlzAC8wEqKK6PBru3jl7A_yl95bQpu6cVPTpK4Mqgkf1CXztLVBSt2Ks3oZwbuwXPXLWyouBWLVWGNWQexSgSxsj_Qulcy4a-fN";

    [Fact]
    public void Decrypter_OnTheExampleOfTheRfc_GivesItsPlaintext()
    {
        using PushDecrypter decrypter = new(Key(), Base64Url.Decode(Auth));

        Assert.Equal("When I grow up, I want to be a watermelon", decrypter.DecryptText(Base64Url.Decode(Body)));
    }

    [Fact]
    public void Decrypter_OnABodyThatWasChanged_Fails()
    {
        using PushDecrypter decrypter = new(Key(), Base64Url.Decode(Auth));
        byte[] body = Base64Url.Decode(Body);
        body[^20] ^= 1;

        Assert.ThrowsAny<CryptographicException>(() => decrypter.Decrypt(body));
    }

    private static ECDiffieHellman Key()
    {
        byte[] point = Base64Url.Decode(UserAgentPublic);
        return ECDiffieHellman.Create(new ECParameters
        {
            Curve = ECCurve.NamedCurves.nistP256,
            D = Base64Url.Decode(UserAgentPrivate),
            Q = new ECPoint { X = point[1..33], Y = point[33..] },
        });
    }
}
