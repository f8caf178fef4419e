using BoothWatch.Service.Assessing;
using BoothWatch.Service.Configuration;
using BoothWatch.Service.Outputs.Pump;
using BoothWatch.Verdicts;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;

namespace BoothWatch.Service.Tests.Outages;

/// <summary>
/// The whole service as it is put together for a user, except that nobody turns the assessment loop and the sensors but the
/// caller: every output runs.
/// </summary>
internal sealed class TickRig : IAsyncDisposable
{
    private readonly WebApplication _app;
    private readonly IHostedService[] _running;
    private readonly AssessmentLoop _loop;
    private readonly SensorPoller _poller;

    private TickRig(WebApplication app)
    {
        _app = app;
        IHostedService[] parts = [.. app.Services.GetServices<IHostedService>()];
        _loop = parts.OfType<AssessmentLoop>().Single();
        _poller = parts.OfType<SensorPoller>().Single();
        _running = [.. parts.Where(part => part != _loop && part != _poller)];
    }

    /// <summary>How the outputs fare.</summary>
    public IReadOnlyList<OutputHealth> Health => _app.Services.GetRequiredService<Func<IReadOnlyList<OutputHealth>>>()();

    public static async Task<TickRig> StartAsync(params (string Key, string Value)[] settings)
    {
        IConfigurationRoot configuration = new ConfigurationBuilder()
            .AddInMemoryCollection(settings
                .Append(("page:url", "http://127.0.0.1:0"))
                .Append(("logging:level", "fatal"))
                .Append(("logging:frameworkLevel", "fatal"))
                .ToDictionary(setting => setting.Item1, setting => (string?)setting.Item2))
            .Build();
        var rig = new TickRig(BoothHost.Build(new ConfigurationFile(null, configuration, [])));
        foreach (IHostedService part in rig._running)
        {
            await part.StartAsync(CancellationToken.None);
        }

        rig._poller.Sweep();
        return rig;
    }

    /// <summary>One round of the loop.</summary>
    public Assessment Tick() => _loop.Tick();

    /// <summary>Asks every sensor once.</summary>
    public void Sweep() => _poller.Sweep();

    public async ValueTask DisposeAsync()
    {
        foreach (IHostedService part in _running.Reverse())
        {
            await part.StopAsync(CancellationToken.None);
        }

        await _app.DisposeAsync();
    }
}
