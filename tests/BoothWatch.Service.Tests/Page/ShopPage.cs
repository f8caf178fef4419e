using System.Net;
using BoothWatch.Service.Access;
using BoothWatch.Service.Page;
using BoothWatch.Verdicts;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace BoothWatch.Service.Tests.Page;

/// <summary>The real page over a real server on a free port of this machine, fed by hand; <c>caller</c> is where requests seem to come from.</summary>
public sealed class ShopPage : IAsyncDisposable
{
    private readonly WebApplication _app;
    private readonly string _folder;

    private ShopPage(WebApplication app, string folder, string url) => (_app, _folder, Url) = (app, folder, url);

    public string Url { get; }

    public IServiceProvider Services => _app.Services;

    /// <summary>Signs a browser of this machine in, once.</summary>
    public string SignInLink => $"{Url}/sign-in#{Services.GetRequiredService<StartCode>().Current}";

    /// <summary>Begins a session while no secret is set; the value for a Cookie header.</summary>
    public string SignIn() => "boothwatch=" + Services.GetRequiredService<SessionStore>().Begin("none");

    public PageFeed Feed => _app.Services.GetRequiredService<PageFeed>();

    public static async Task<ShopPage> Start(
        string url = "http://127.0.0.1:0", TimeProvider? time = null, IHistory? history = null, PageSources? sources = null, IPAddress? caller = null,
        params (string Key, string Value)[] settings)
    {
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.Configuration.AddInMemoryCollection(
            settings.Append(("page:url", url)).ToDictionary(s => s.Item1, s => (string?)s.Item2));
        builder.Services.AddSingleton(time ?? TimeProvider.System);
        builder.Services.AddSingleton(history ?? new EmptyHistory());
        builder.Services.AddSingleton(sources ?? Samples.Sources);
        string folder = Directory.CreateTempSubdirectory("boothwatch-page-").FullName;
        builder.Services.AddSingleton(new AccessFolder(Path.Combine(folder, "access")));
        builder.Services.AddPage();
        WebApplication app = builder.Build();
        if (caller is not null)
        {
            app.Use((context, next) =>
            {
                context.Connection.RemoteIpAddress = caller;
                return next(context);
            });
        }

        app.MapPage();
        await app.StartAsync();
        string address = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single();
        return new ShopPage(app, folder, address);
    }

    public Task Show(Assessment assessment) => Feed.HandleAsync(assessment, CancellationToken.None);

    public async ValueTask DisposeAsync()
    {
        await _app.StopAsync();
        await _app.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }
}
