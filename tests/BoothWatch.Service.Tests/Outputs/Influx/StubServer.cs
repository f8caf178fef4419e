using System.Globalization;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace BoothWatch.Service.Tests.Outputs.Influx;

/// <summary>
/// A server that answers a write as the reference of InfluxDB 2 says that InfluxDB would: no such server is at hand here.
/// https://docs.influxdata.com/influxdb/v2/api/#operation/PostWrite
/// </summary>
internal sealed class StubServer : IAsyncDisposable
{
    private readonly WebApplication _app;

    private StubServer(WebApplication app) => _app = app;

    public string Url => _app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single();

    public List<(string Path, string Authorization, string Encoding)> Requests { get; } = [];

    public Func<HttpContext, Task> Answer { get; set; } = context => Say(context, 204, "");

    public static async Task<StubServer> StartAsync()
    {
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        WebApplication app = builder.Build();
        app.Urls.Add("http://127.0.0.1:0");
        var server = new StubServer(app);
        app.Run(context =>
        {
            server.Requests.Add((
                context.Request.Path + context.Request.QueryString.ToString(),
                context.Request.Headers.Authorization.ToString(),
                context.Request.Headers.ContentEncoding.ToString()));
            return server.Answer(context);
        });
        await app.StartAsync();
        return server;
    }

    public static Task Say(HttpContext context, int status, string message, string? retryAfter = null)
    {
        context.Response.StatusCode = status;
        if (retryAfter is not null)
        {
            context.Response.Headers.RetryAfter = retryAfter;
        }

        return status == 204
            ? Task.CompletedTask
            : context.Response.WriteAsJsonAsync(new { code = status.ToString(CultureInfo.InvariantCulture), message });
    }

    public async ValueTask DisposeAsync()
    {
        await _app.StopAsync();
        await _app.DisposeAsync();
    }
}
