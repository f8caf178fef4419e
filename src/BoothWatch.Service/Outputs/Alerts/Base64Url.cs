namespace BoothWatch.Service.Outputs.Alerts;

/// <summary>Base64url without padding (RFC 4648, 5).</summary>
internal static class Base64Url
{
    public static string Encode(ReadOnlySpan<byte> bytes) => System.Buffers.Text.Base64Url.EncodeToString(bytes);

    public static byte[] Decode(string text) => System.Buffers.Text.Base64Url.DecodeFromChars(text);

    /// <summary>The bytes; null when the text is none.</summary>
    public static byte[]? TryDecode(string text) => System.Buffers.Text.Base64Url.IsValid(text) ? Decode(text) : null;
}
