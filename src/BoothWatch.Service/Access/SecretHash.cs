using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace BoothWatch.Service.Access;

/// <summary>
/// The slow, salted hash of a secret: PBKDF2 with HMAC-SHA-256 (RFC 8018, 5.2), written as
/// <c>pbkdf2-sha256$iterations$salt$hash</c>, salt and hash in Base64.
/// </summary>
internal sealed class SecretHash
{
    /// <summary>Iterations of a new hash: what the OWASP Password Storage Cheat Sheet asks for with this function.</summary>
    public const int Iterations = 600_000;

    private const string Name = "pbkdf2-sha256";
    private const int SaltBytes = 16;
    private const int HashBytes = 32;
    private readonly int _iterations;
    private readonly byte[] _salt;
    private readonly byte[] _hash;

    private SecretHash(int iterations, byte[] salt, byte[] hash)
    {
        (_iterations, _salt, _hash) = (iterations, salt, hash);
        Stamp = Convert.ToHexString(SHA256.HashData(salt), 0, 8);
    }

    /// <summary>Names this secret without telling anything of it: a session holds while the stamp is the one it began under.</summary>
    public string Stamp { get; }

    /// <summary>Hashes a secret with a salt of its own.</summary>
    public static SecretHash Of(string secret, int iterations = Iterations)
    {
        byte[] salt = RandomNumberGenerator.GetBytes(SaltBytes);
        return new SecretHash(iterations, salt, Derive(secret, salt, iterations, HashBytes));
    }

    /// <summary>Reads what <see cref="ToString"/> wrote; null when it is something else.</summary>
    public static SecretHash? Parse(string text)
    {
        try
        {
            return text.Trim().Split('$') is [Name, { } count, { } salt, { } hash]
                && int.TryParse(count, NumberStyles.None, CultureInfo.InvariantCulture, out int iterations) && iterations >= 1
                && Convert.FromBase64String(salt) is { Length: > 0 } saltBytes
                && Convert.FromBase64String(hash) is { Length: >= 16 } hashBytes
                    ? new SecretHash(iterations, saltBytes, hashBytes)
                    : null;
        }
        catch (FormatException)
        {
            return null;
        }
    }

    /// <summary>Whether it is the hash of this secret; takes the same time for every answer.</summary>
    public bool Matches(string secret) => CryptographicOperations.FixedTimeEquals(Derive(secret, _salt, _iterations, _hash.Length), _hash);

    /// <inheritdoc/>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Name}${_iterations}${Convert.ToBase64String(_salt)}${Convert.ToBase64String(_hash)}");

    private static byte[] Derive(string secret, byte[] salt, int iterations, int length) =>
        Rfc2898DeriveBytes.Pbkdf2(Encoding.UTF8.GetBytes(secret.Trim()), salt, iterations, HashAlgorithmName.SHA256, length);
}
