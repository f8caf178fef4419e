using System.Net.Http.Headers;
using Lib.Net.Http.WebPush.Authentication;

namespace BoothWatch.Service.Outputs.Alerts.WebPush;

/// <summary>
/// Signs for the origin of the push service with its port (RFC 8292, 2, and RFC 6454, 6.1): the client of the package leaves a port
/// that is not the usual one out, and a push service of the shop's own would refuse that.
/// </summary>
internal sealed class VapidOrigin(Func<VapidAuthentication> sender) : DelegatingHandler
{
    protected override Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
    {
        using VapidAuthentication own = sender();
        string origin = request.RequestUri!.GetLeftPart(UriPartial.Authority);
        request.Headers.Authorization = new AuthenticationHeaderValue("vapid", own.GetVapidSchemeAuthenticationHeaderValueParameter(origin));
        return base.SendAsync(request, cancellationToken);
    }
}
