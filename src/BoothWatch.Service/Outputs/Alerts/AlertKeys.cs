using System.Security.Cryptography;
using System.Text.Json;
using BoothWatch.Service.Outputs.Alerts.WebPush;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Outputs.Alerts;

/// <summary>
/// The keys that the service makes for itself at their first use, and keeps in a file that it alone may read: the pair by which push
/// services know it (VAPID, RFC 8292, P-256), and the one that tokens of acknowledgement are made with. Safe for several threads.
/// </summary>
/// <remarks>With a new file every phone has to subscribe again.</remarks>
internal sealed class AlertKeys
{
    private const UnixFileMode Own = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    private readonly Lazy<Stored> _keys;

    private sealed record Stored(string VapidPublic, string VapidPrivate, string Acknowledge);

    public AlertKeys(IOptions<AlertsOptions> options, AlertSources sources)
    {
        WebPushOptions push = options.Value.WebPush;
        Path = push.KeyFile.Length > 0 ? System.IO.Path.GetFullPath(push.KeyFile) : System.IO.Path.Combine(sources.Folder, "alert-keys.json");
        _keys = new Lazy<Stored>(() => Load(Path), LazyThreadSafetyMode.PublicationOnly);
    }

    /// <summary>The file.</summary>
    public string Path { get; }

    /// <summary>The public key, an uncompressed point in base64url; phones subscribe with it.</summary>
    public string VapidPublic => _keys.Value.VapidPublic;

    /// <summary>The private key, 32 bytes in base64url.</summary>
    public string VapidPrivate => _keys.Value.VapidPrivate;

    /// <summary>The key of the tokens, 32 bytes.</summary>
    public byte[] Acknowledge => Base64Url.Decode(_keys.Value.Acknowledge);

    private static Stored Load(string path)
    {
        if (!File.Exists(path))
        {
            Make(path);
        }

        Stored? stored;
        try
        {
            if (!OperatingSystem.IsWindows() && (File.GetUnixFileMode(path) & ~Own) != UnixFileMode.None)
            {
                // Made by us with the right mode; somebody has copied or opened it since.
                File.SetUnixFileMode(path, Own);
            }

            stored = JsonSerializer.Deserialize<Stored>(File.ReadAllBytes(path), AlertJson.Options);
        }
        catch (JsonException e)
        {
            throw new AlertDeliveryException($"{path} holds no keys ({e.Message}); put the old file back, or move it away and let every phone subscribe again", e);
        }

        bool whole = stored is { VapidPublic.Length: > 0, VapidPrivate.Length: > 0, Acknowledge.Length: > 0 };
        return whole ? stored! : throw new AlertDeliveryException($"{path} lacks a key; put the old file back, or move it away and let every phone subscribe again");
    }

    // Written aside and linked into place, so that of two first uses at once one file remains, and never half of one.
    private static void Make(string path)
    {
        using ECDsa pair = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        ECParameters parameters = pair.ExportParameters(includePrivateParameters: true);
        var made = new Stored(
            Base64Url.Encode([4, .. parameters.Q.X!, .. parameters.Q.Y!]),
            Base64Url.Encode(parameters.D!),
            Base64Url.Encode(RandomNumberGenerator.GetBytes(32)));
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(path)!);
        string aside = $"{path}.{Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(4))}";
        var asOwn = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
        {
            asOwn.UnixCreateMode = Own;
        }

        using (var file = new FileStream(aside, asOwn))
        {
            JsonSerializer.Serialize(file, made, AlertJson.Options);
            file.Flush(flushToDisk: true);
        }

        try
        {
            File.Move(aside, path, overwrite: false);
        }
        catch (IOException) when (File.Exists(path))
        {
            File.Delete(aside);
        }
    }
}
