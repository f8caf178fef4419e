using System.Device.Gpio;
using BoothWatch.Service.Assessing;
using BoothWatch.Service.Configuration;
using BoothWatch.Service.Outputs.Light;
using BoothWatch.Service.Outputs.Pump;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Sensors;
using BoothWatch.Service.Sensors.Emulation;
using BoothWatch.Verdicts;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Time.Testing;

namespace BoothWatch.Service.Tests.EndToEnd;

/// <summary>
/// The whole service as it is shipped, from the registers of the emulated parts to the pins of the lamps and the journal, only that
/// the test hands out the seconds and nothing listens for browsers. Emulated parts convert by the clock of the machine, so a second
/// takes as long as the reading of all sensors.
/// </summary>
internal sealed class ShopRun : IAsyncDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(1);
    private static readonly TimeSpan UntilLampsAreLookedAt = 2 * LightPatterns.Step;

    private readonly FakeTimeProvider _time = new(new DateTimeOffset(2026, 11, 25, 8, 0, 0, TimeSpan.Zero));
    private readonly string _folder = Directory.CreateTempSubdirectory("boothwatch-shop-").FullName;
    private readonly List<VerdictLine> _changes = [];
    private readonly WebApplication _host;
    private readonly SensorPoller _poller;
    private readonly AssessmentLoop _loop;
    private readonly OutputPump[] _pumps;
    private readonly ShopClock _clock;
    private readonly (Lamp Lamp, int Pin)[] _lamps;
    private int _ticks;

    private ShopRun(IEnumerable<(string Key, string Value)> settings)
    {
        ConfigurationFile shipped = ConfigurationFile.Read(Path.Combine(RepositoryFile.Root, ConfigurationFile.DefaultRelativePath));
        IConfigurationRoot configuration = new ConfigurationBuilder()
            .AddInMemoryCollection(shipped.Configuration.AsEnumerable())
            .AddInMemoryCollection(settings
                .Append(("series:folder", _folder))

                // A real broker keeps real time; this day runs on a clock of its own.
                .Append(("mqtt:use", "off"))
                .Append(("logging:level", "fatal"))
                .ToDictionary(setting => setting.Item1, setting => (string?)setting.Item2))
            .Build();
        ConfigurationFile file = shipped with { Configuration = configuration };
        Assert.Empty(ConfigurationCheck.Errors(file));

        _host = BoothHost.Build(file, _time);
        IHostedService[] parts = [.. _host.Services.GetServices<IHostedService>()];
        _poller = parts.OfType<SensorPoller>().Single();
        _loop = parts.OfType<AssessmentLoop>().Single();
        _pumps = [.. parts.OfType<OutputPump>()];
        _clock = _host.Services.GetRequiredService<ShopClock>();
        var light = configuration.GetSection(LightOptions.Section).Get<LightOptions>()!;
        _lamps = [(Lamp.Green, light.GreenPin), (Lamp.Yellow, light.YellowPin), (Lamp.Red, light.RedPin)];
    }

    /// <summary>Day and time of day in the shop.</summary>
    public ShopTime Now => _clock.Now;

    /// <summary>Every change of the verdict so far, the first verdict included.</summary>
    public IReadOnlyList<VerdictLine> Changes => _changes;

    public static async Task<ShopRun> StartAsync(params (string Key, string Value)[] settings)
    {
        var run = new ShopRun(settings);
        foreach (OutputPump pump in run._pumps)
        {
            await pump.StartAsync(CancellationToken.None);
        }

        return run;
    }

    /// <summary>
    /// One second: the sensors are read, the loop ticks, the lamps follow, the outputs take what they are given.
    /// Fails when a lamp of another verdict is lit.
    /// </summary>
    public Assessment Tick()
    {
        ShopTime now = Now;
        _poller.Sweep();
        Assessment assessment = _loop.Tick();
        _ticks++;
        _time.Advance(UntilLampsAreLookedAt);
        Lamp[] lit = Lit();
        Assert.All(lit, lamp => Assert.Equal(LightPatterns.Of(assessment.Verdict).Lamp, lamp));
        if (_changes.Count == 0 || _changes[^1].Verdict != assessment.Verdict)
        {
            _changes.Add(new VerdictLine(now.TimeOfDay, assessment.Verdict, assessment.Reasons[0].Rule, Assert.Single(lit)));
        }

        bool taken = SpinWait.SpinUntil(() => _pumps.All(pump => pump.Health.Handled == _ticks), Patience);
        Assert.True(taken, $"an output did not take the assessment of tick {_ticks}: {string.Join("; ", _pumps.Select(pump => pump.Health))}");
        _time.Advance(AssessmentLoop.Interval - UntilLampsAreLookedAt);
        return assessment;
    }

    /// <summary>What the journal kept of the changes.</summary>
    public IReadOnlyList<VerdictChange> Journalled() =>
        _host.Services.GetRequiredService<SeriesQuery>().VerdictChanges(DateTimeOffset.MinValue, DateTimeOffset.MaxValue);

    /// <summary>Stops the service.</summary>
    /// <returns>The lamps in the order in which they were switched on.</returns>
    public async Task<IReadOnlyList<Lamp>> StopAsync()
    {
        foreach (OutputPump pump in _pumps)
        {
            await pump.StopAsync(CancellationToken.None);
        }

        VirtualGpioDriver pins = _host.Services.GetRequiredService<GpioSource>().Virtual;
        await _host.DisposeAsync();
        return
        [
            .. pins.Changes
                .Where(change => change.Value == PinValue.High)
                .Select(change => _lamps.Single(lamp => lamp.Pin == change.Pin).Lamp),
        ];
    }

    public async ValueTask DisposeAsync()
    {
        await _host.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }

    private Lamp[] Lit()
    {
        VirtualGpioDriver pins = _host.Services.GetRequiredService<GpioSource>().Virtual;
        return [.. _lamps.Where(lamp => pins.Driven(lamp.Pin) == PinValue.High).Select(lamp => lamp.Lamp)];
    }
}
