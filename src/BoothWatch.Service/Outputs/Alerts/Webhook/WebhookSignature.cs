using System.Security.Cryptography;
using System.Text;

namespace BoothWatch.Service.Outputs.Alerts.Webhook;

/// <summary>
/// The signature of a webhook after the Standard Webhooks specification (https://www.standardwebhooks.com): HMAC-SHA-256 over
/// <c>id.timestamp.body</c>, in base64, with the version before it.
/// </summary>
public static class WebhookSignature
{
    private const string Prefix = "whsec_";
    private const int ShortestKey = 24;
    private const int LongestKey = 64;

    /// <summary>The bytes of a secret; null when it is none.</summary>
    /// <param name="secret">Base64 of 24 to 64 bytes, with or without <c>whsec_</c> before it.</param>
    public static byte[]? KeyOf(string secret)
    {
        ArgumentNullException.ThrowIfNull(secret);
        string text = secret.Trim();
        text = text.StartsWith(Prefix, StringComparison.Ordinal) ? text[Prefix.Length..] : text;
        byte[] key = new byte[LongestKey + 1];
        return Convert.TryFromBase64String(text, key, out int length) && length is >= ShortestKey and <= LongestKey ? key[..length] : null;
    }

    /// <summary>The value of the header <c>webhook-signature</c>.</summary>
    /// <param name="key">The shared secret.</param>
    /// <param name="id">Value of <c>webhook-id</c>.</param>
    /// <param name="unixSeconds">Value of <c>webhook-timestamp</c>.</param>
    /// <param name="body">The body, byte for byte.</param>
    public static string Sign(byte[] key, string id, long unixSeconds, ReadOnlySpan<byte> body)
    {
        byte[] head = Encoding.UTF8.GetBytes(FormattableString.Invariant($"{id}.{unixSeconds}."));
        return "v1," + Convert.ToBase64String(HMACSHA256.HashData(key, (ReadOnlySpan<byte>)[.. head, .. body]));
    }
}
