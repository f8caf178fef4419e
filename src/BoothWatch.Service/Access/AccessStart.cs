using System.Net;

namespace BoothWatch.Service.Access;

/// <summary>Whether the page may be opened to other machines as it is configured.</summary>
internal static class AccessStart
{
    /// <summary>Why not, with the setting and the fix; null when it may.</summary>
    /// <param name="configuration">The configuration.</param>
    /// <param name="url">Value of <c>page:url</c>.</param>
    /// <param name="endPoint">Where that listens; null when it is no address, which is an error of its own.</param>
    public static string? Refusal(IConfiguration configuration, string url, IPEndPoint? endPoint)
    {
        AccessOptions options = new();
        configuration.GetSection(AccessOptions.Section).Bind(options);
        if (endPoint is null || IPAddress.IsLoopback(endPoint.Address) || options.Reading == ReadingAccess.Open)
        {
            return null;
        }

        AccessFolder folder = AccessFolder.Of(configuration);
        using SharedSecret secret = new(folder);
        return secret.State switch
        {
            { Trouble: { } trouble } => trouble,
            { IsNone: true } => $"page:url is {url}, which other machines reach, but no secret is set in {folder.Path}; set one as the user that runs BoothWatch with 'access set-secret', "
                + "or set access:reading to open so that everyone there may read and nobody change, or listen on http://127.0.0.1:5080",
            _ => null,
        };
    }
}
