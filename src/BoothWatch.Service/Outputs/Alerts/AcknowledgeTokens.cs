using System.Security.Cryptography;
using System.Text;

namespace BoothWatch.Service.Outputs.Alerts;

/// <summary>
/// Tokens that acknowledge one alert and can do nothing else: the id of the alert and a code that only this service can make
/// (HMAC-SHA-256, RFC 2104, with a key of its own).
/// </summary>
internal sealed class AcknowledgeTokens(AlertKeys keys)
{
    private const int LongestToken = 128;

    /// <summary>The token of an alert.</summary>
    public string Of(string alert) => $"{alert}.{Base64Url.Encode(Code(alert))}";

    /// <summary>The alert that a token acknowledges; null when it is no token of ours.</summary>
    public string? AlertOf(string? token)
    {
        if (token is null || token.Length > LongestToken || token.Split('.') is not [{ Length: > 0 } alert, { Length: > 0 } code])
        {
            return null;
        }

        return Base64Url.TryDecode(code) is { } given && CryptographicOperations.FixedTimeEquals(given, Code(alert)) ? alert : null;
    }

    private byte[] Code(string alert) => HMACSHA256.HashData(keys.Acknowledge, Encoding.UTF8.GetBytes($"acknowledge:{alert}"));
}
