using System.IO.Compression;
using System.Security.Cryptography;
using Microsoft.Net.Http.Headers;

namespace BoothWatch.Service.Page;

/// <summary>A file of a page as it is sent: compressed once, when first asked for and where that makes it smaller, and not sent again to a browser that has it.</summary>
/// <param name="bytes">The file.</param>
/// <param name="mediaType">Its media type.</param>
/// <remarks>A page itself is asked for anew every time, as its <c>no-store</c> says; what it includes is kept by the browser and only checked.</remarks>
public sealed class PageAsset(byte[] bytes, string mediaType)
{
    private readonly bool _isPage = mediaType.StartsWith("text/html", StringComparison.Ordinal);
    private readonly string _tag = Convert.ToHexString(SHA256.HashData(bytes))[..16];
    private readonly Lazy<byte[]> _brotli = new(() => Pack(bytes, to => new BrotliStream(to, CompressionLevel.Optimal)));
    private readonly Lazy<byte[]> _gzip = new(() => Pack(bytes, to => new GZipStream(to, CompressionLevel.Optimal)));

    /// <summary>The answer to a request for the file.</summary>
    public IResult Answer(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        (string? coding, byte[] body) = Accepts(context, "br") && _brotli.Value.Length < bytes.Length ? ("br", _brotli.Value)
            : Accepts(context, "gzip") && _gzip.Value.Length < bytes.Length ? ("gzip", _gzip.Value)
            : ((string?)null, bytes);
        IHeaderDictionary headers = context.Response.Headers;
        headers.CacheControl = _isPage ? "no-store" : "no-cache";
        headers.Vary = HeaderNames.AcceptEncoding;
        if (coding is not null)
        {
            headers.ContentEncoding = coding;
        }

        return TypedResults.Bytes(body, mediaType, entityTag: _isPage ? null : new EntityTagHeaderValue($"\"{_tag}-{coding ?? "plain"}\""));
    }

    private static bool Accepts(HttpContext context, string coding) =>
        context.Request.GetTypedHeaders().AcceptEncoding.Any(accepted => accepted.Value == coding && accepted.Quality is not 0);

    private static byte[] Pack(byte[] bytes, Func<Stream, Stream> coder)
    {
        using MemoryStream packed = new();
        using (Stream stream = coder(packed))
        {
            stream.Write(bytes);
        }

        return packed.ToArray();
    }
}
