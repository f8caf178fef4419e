using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;

namespace BoothWatch.Service.Tests.Outputs.Alerts;

/// <summary>The phone's side of Web Push: a key pair and a secret of its own, and what undoes RFC 8291 over RFC 8188 (aes128gcm).</summary>
internal sealed class PushDecrypter : IDisposable
{
    private const int SaltBytes = 16;
    private const int PointBytes = 65;
    private const int TagBytes = 16;

    private readonly ECDiffieHellman _key;
    private readonly byte[] _public;

    public PushDecrypter()
        : this(ECDiffieHellman.Create(ECCurve.NamedCurves.nistP256), RandomNumberGenerator.GetBytes(16))
    {
    }

    public PushDecrypter(ECDiffieHellman key, byte[] auth)
    {
        (_key, Auth) = (key, auth);
        ECPoint point = key.ExportParameters(includePrivateParameters: false).Q;
        _public = [4, .. point.X!, .. point.Y!];
    }

    public byte[] Auth { get; }

    public byte[] PublicKey => _public;

    /// <summary>Decrypts a body of one record.</summary>
    public byte[] Decrypt(ReadOnlySpan<byte> body)
    {
        ReadOnlySpan<byte> salt = body[..SaltBytes];
        uint recordSize = BinaryPrimitives.ReadUInt32BigEndian(body[SaltBytes..]);
        Assert.Equal(PointBytes, body[SaltBytes + 4]);
        ReadOnlySpan<byte> sender = body.Slice(SaltBytes + 5, PointBytes);
        ReadOnlySpan<byte> record = body[(SaltBytes + 5 + PointBytes)..];
        Assert.True(record.Length <= recordSize, $"a record of {record.Length} bytes is longer than the {recordSize} that the header says");

        using ECDiffieHellman other = ECDiffieHellman.Create(new ECParameters
        {
            Curve = ECCurve.NamedCurves.nistP256,
            Q = new ECPoint { X = sender.Slice(1, 32).ToArray(), Y = sender.Slice(33, 32).ToArray() },
        });
        byte[] shared = _key.DeriveRawSecretAgreement(other.PublicKey);

        // RFC 8291, 3.4: first the secret of both keys and the authentication secret, then key and nonce after RFC 8188, 2.2 and 2.3.
        byte[] input = HKDF.DeriveKey(HashAlgorithmName.SHA256, shared, 32, Auth, [.. "WebPush: info\0"u8, .. _public, .. sender]);
        byte[] key = HKDF.DeriveKey(HashAlgorithmName.SHA256, input, 16, salt.ToArray(), "Content-Encoding: aes128gcm\0"u8.ToArray());
        byte[] nonce = HKDF.DeriveKey(HashAlgorithmName.SHA256, input, 12, salt.ToArray(), "Content-Encoding: nonce\0"u8.ToArray());
        byte[] plain = new byte[record.Length - TagBytes];
        using AesGcm aes = new(key, TagBytes);
        aes.Decrypt(nonce, record[..^TagBytes], record[^TagBytes..], plain);

        // Padding of the last record: a 2, then zeros.
        int end = plain.AsSpan().LastIndexOfAnyExcept((byte)0);
        Assert.Equal(2, plain[end]);
        return plain[..end];
    }

    public string DecryptText(ReadOnlySpan<byte> body) => Encoding.UTF8.GetString(Decrypt(body));

    public void Dispose() => _key.Dispose();
}
