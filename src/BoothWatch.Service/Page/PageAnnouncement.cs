using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;

namespace BoothWatch.Service.Page;

/// <summary>Says at start where the page is and what is emulated.</summary>
internal sealed partial class PageAnnouncement(IServer server, PageSources sources, ILogger<PageAnnouncement> logger) : IHostedLifecycleService
{
    public Task StartedAsync(CancellationToken cancellationToken)
    {
        string address = server.Features.Get<IServerAddressesFeature>()?.Addresses.FirstOrDefault() ?? "nowhere";
        LogAddress(address);
        string[] emulated = [.. sources.Sensors.Where(s => s.Emulated).Select(s => s.Name)];
        if (emulated.Length > 0)
        {
            LogEmulated(string.Join(", ", emulated));
        }

        return Task.CompletedTask;
    }

    public Task StartingAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StartAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StoppingAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StoppedAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    [LoggerMessage(1, LogLevel.Information, "Open the page at {Address}")]
    private partial void LogAddress(string address);

    [LoggerMessage(2, LogLevel.Information, "Emulated, measuring nothing real: {Sensors}")]
    private partial void LogEmulated(string sensors);
}
