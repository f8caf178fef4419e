using System.Net;
using BoothWatch.Service.Access;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Page;

/// <summary>Says at start where the page is and what is emulated.</summary>
internal sealed partial class PageAnnouncement(
    IServer server, PageSources sources, IConfiguration configuration, IOptions<PageOptions> options, SharedSecret secret, StartCode code,
    ILogger<PageAnnouncement> logger) : IHostedLifecycleService
{
    public Task StartedAsync(CancellationToken cancellationToken)
    {
        string address = server.Features.Get<IServerAddressesFeature>()?.Addresses.FirstOrDefault() ?? "nowhere";
        LogAddress(address);
        if (secret.State.IsNone && LocalAddress(address) is { } here)
        {
            LogStartCode($"{here}{AccessGate.SignInPage}#{code.Current}");
        }

        string[] emulated = [.. sources.Sensors.Where(s => s.Emulated).Select(s => s.Name)];
        if (emulated.Length > 0)
        {
            LogEmulated(string.Join(", ", emulated));
        }

        return Task.CompletedTask;
    }

    public Task StartingAsync(CancellationToken cancellationToken)
    {
        string url = options.Value.Url;
        return AccessStart.Refusal(configuration, url, PageAddress.Parse(url)) is { } refusal
            ? throw new OptionsValidationException(AccessOptions.Section, typeof(AccessOptions), [refusal])
            : Task.CompletedTask;
    }

    public Task StartAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StoppingAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StoppedAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <summary>The address by which this machine asks, without a trailing slash; null when the page listens for others only.</summary>
    private static string? LocalAddress(string address) =>
        PageAddress.Parse(address) is not { } endPoint ? null
        : IPAddress.IsLoopback(endPoint.Address) ? address.TrimEnd('/')
        : endPoint.Address.Equals(IPAddress.Any) || endPoint.Address.Equals(IPAddress.IPv6Any) ? $"{new Uri(address).Scheme}://127.0.0.1:{endPoint.Port}"
        : null;

    [LoggerMessage(1, LogLevel.Information, "Open the page at {Address}")]
    private partial void LogAddress(string address);

    [LoggerMessage(2, LogLevel.Information, "Emulated, measuring nothing real: {Sensors}")]
    private partial void LogEmulated(string sensors);

    [LoggerMessage(3, LogLevel.Information, "To make changes from this machine, open {Link} (good once; 'access set-secret' sets a secret instead)")]
    private partial void LogStartCode(string link);
}
