using System.Collections.Concurrent;
using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace BoothWatch.Service.Tests.Outputs.Alerts;

/// <summary>A real server on loopback that keeps what it is sent: a push service or a webhook receiver.</summary>
internal sealed class Receiver : IAsyncDisposable
{
    private readonly WebApplication _app;

    private Receiver(WebApplication app) => _app = app;

    public ConcurrentQueue<Letter> Letters { get; } = [];

    /// <summary>What is answered, by path; 201 where nothing is set.</summary>
    public Func<string, HttpStatusCode> Answer { get; set; } = _ => HttpStatusCode.Created;

    /// <summary>Value of Retry-After; null for none.</summary>
    public string? RetryAfter { get; set; }

    /// <summary>Holds answers to a path back until it is completed.</summary>
    public ConcurrentDictionary<string, TaskCompletionSource> Held { get; } = [];

    public string Url { get; private set; } = "";

    public string Origin => Url.TrimEnd('/');

    public static async Task<Receiver> StartAsync()
    {
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.ConfigureKestrel(kestrel => kestrel.Listen(IPAddress.Loopback, 0));
        WebApplication app = builder.Build();
        Receiver receiver = new(app);
        app.Run(receiver.TakeAsync);
        await app.StartAsync();
        receiver.Url = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single();
        return receiver;
    }

    public async ValueTask DisposeAsync()
    {
        foreach (TaskCompletionSource held in Held.Values)
        {
            held.TrySetResult();
        }

        await _app.StopAsync();
        await _app.DisposeAsync();
    }

    private async Task TakeAsync(HttpContext context)
    {
        using MemoryStream body = new();
        await context.Request.Body.CopyToAsync(body);
        string path = context.Request.Path.Value!;
        Letters.Enqueue(new Letter(
            context.Request.Method, path, context.Request.Headers.ToDictionary(h => h.Key, h => h.Value.ToString(), StringComparer.OrdinalIgnoreCase), body.ToArray()));
        if (Held.TryGetValue(path, out TaskCompletionSource? held))
        {
            await held.Task;
        }

        context.Response.StatusCode = (int)Answer(path);
        if (RetryAfter is { } seconds)
        {
            context.Response.Headers.RetryAfter = seconds;
        }

        if (context.Response.StatusCode is >= 300 and < 400)
        {
            context.Response.Headers.Location = Origin + "/elsewhere";
        }
    }

    internal sealed record Letter(string Method, string Path, IReadOnlyDictionary<string, string> Headers, byte[] Body)
    {
        public string this[string header] => Headers.TryGetValue(header, out string? value) ? value : "";
    }
}
