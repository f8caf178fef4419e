using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Page;

/// <summary>Makes the server listen where the configuration says, and nowhere else.</summary>
internal sealed class PageListening(IOptions<PageOptions> options) : IConfigureOptions<KestrelServerOptions>
{
    public void Configure(KestrelServerOptions kestrel)
    {
        kestrel.AddServerHeader = false;
        if (PageAddress.Parse(options.Value.Url) is { } endPoint)
        {
            kestrel.Listen(endPoint);
        }
    }
}
