using System.IO.Compression;
using System.Security.Cryptography;
using Microsoft.Net.Http.Headers;

namespace BoothWatch.Service.Page;

/// <summary>A file of the page as it is sent: compressed once, when first asked for, and not sent again to a browser that has it.</summary>
/// <param name="bytes">The file.</param>
/// <param name="mediaType">Its media type.</param>
public sealed class PageAsset(byte[] bytes, string mediaType)
{
    private readonly string _tag = Convert.ToHexString(SHA256.HashData(bytes))[..16];
    private readonly Lazy<byte[]> _brotli = new(() => Pack(bytes, to => new BrotliStream(to, CompressionLevel.Optimal)));
    private readonly Lazy<byte[]> _gzip = new(() => Pack(bytes, to => new GZipStream(to, CompressionLevel.Optimal)));

    /// <summary>The answer to a request for the file.</summary>
    public IResult Answer(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        (string? coding, byte[] body) = Accepts(context, "br") ? ("br", _brotli.Value)
            : Accepts(context, "gzip") ? ("gzip", _gzip.Value)
            : ((string?)null, bytes);
        IHeaderDictionary headers = context.Response.Headers;
        headers.CacheControl = "no-cache";
        headers.Vary = HeaderNames.AcceptEncoding;
        if (coding is not null)
        {
            headers.ContentEncoding = coding;
        }

        return TypedResults.Bytes(body, mediaType, entityTag: new EntityTagHeaderValue($"\"{_tag}-{coding ?? "plain"}\""));
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
