using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;

namespace BoothWatch.Service.Tests.Access;

/// <summary>Lets a request seem to come from the address that its header names, before anything of the service sees it.</summary>
public sealed class SeemsFrom : IStartupFilter
{
    /// <summary>Name of the header.</summary>
    public const string Header = "X-Test-From";

    /// <summary>A machine elsewhere; the address is kept for documentation (RFC 5737).</summary>
    public const string Afar = "192.0.2.7";

    public Action<IApplicationBuilder> Configure(Action<IApplicationBuilder> next) => app =>
    {
        app.Use((context, rest) =>
        {
            if (context.Request.Headers[Header] is [{ } address])
            {
                context.Connection.RemoteIpAddress = IPAddress.Parse(address);
            }

            return rest(context);
        });
        next(app);
    };
}
