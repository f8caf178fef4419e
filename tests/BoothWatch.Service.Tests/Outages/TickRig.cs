using System.Diagnostics;
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

    /// <summary>Rounds in which the drying film was not asked: the readings were not fit for it.</summary>
    public int WithoutFilm { get; private set; }

    public static async Task<TickRig> StartAsync(params (string Key, string Value)[] settings)
    {
        IConfigurationRoot configuration = new ConfigurationBuilder()
            .AddInMemoryCollection(settings
                .Append(("page:url", "http://127.0.0.1:0"))
                .Append(("jobs:demoPast", "false"))
                .Append(("logging:level", "fatal"))
                .Append(("logging:frameworkLevel", "fatal"))
                .ToDictionary(setting => setting.Item1, setting => (string?)setting.Item2))
            .Build();
        var rig = new TickRig(BoothHost.Build(new ConfigurationFile(null, configuration, [])));
        foreach (IHostedService part in rig._running)
        {
            await part.StartAsync(CancellationToken.None);
        }

        return rig;
    }

    /// <summary>How an output fares.</summary>
    public OutputHealth Health(string output) =>
        _app.Services.GetRequiredService<Func<IReadOnlyList<OutputHealth>>>()().Single(health => health.Name == output);

    /// <summary>Asks every sensor, then times one round of the loop, ms: readings are fresh, and the film is asked, as in a booth.</summary>
    public double TickMs()
    {
        _poller.Sweep();
        long start = Stopwatch.GetTimestamp();
        Assessment assessment = _loop.Tick();
        double ms = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        WithoutFilm += assessment.Film is null ? 1 : 0;
        return ms;
    }

    public async ValueTask DisposeAsync()
    {
        foreach (IHostedService part in _running.Reverse())
        {
            await part.StopAsync(CancellationToken.None);
        }

        await _app.DisposeAsync();
    }
}
