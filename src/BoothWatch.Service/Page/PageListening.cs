using BoothWatch.Service.Access;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.AspNetCore.Server.Kestrel.Https;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Page;

/// <summary>Makes the server listen where the configuration says, and nowhere else.</summary>
internal sealed class PageListening(IOptions<PageOptions> options, ServerCertificate certificate) : IConfigureOptions<KestrelServerOptions>
{
    public void Configure(KestrelServerOptions kestrel)
    {
        kestrel.AddServerHeader = false;
        if (PageAddress.Parse(options.Value.Url) is { } endPoint)
        {
            kestrel.Listen(endPoint, listen =>
            {
                if (certificate.IsUsed)
                {
                    listen.UseHttps(new TlsHandshakeCallbackOptions { OnConnection = _ => ValueTask.FromResult(certificate.Handshake()) });
                }
            });
        }
    }
}
