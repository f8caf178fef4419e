using BoothWatch.Film;
using BoothWatch.Readings;
using BoothWatch.Service.Assessing;
using BoothWatch.Service.Outputs;
using BoothWatch.Service.Outputs.Pump;
using BoothWatch.Service.Sensors;
using BoothWatch.Verdicts;
using BoothWatch.Warming;
using Microsoft.Extensions.Hosting.Systemd;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;

namespace BoothWatch.Service.Tests.Assessing;

public sealed class AssessmentLoopTests : IDisposable
{
    private static readonly Quantity[] All = Enum.GetValues<Quantity>();

    private readonly FakeTimeProvider _time = new(new DateTimeOffset(2026, 11, 25, 9, 0, 0, TimeSpan.Zero));
    private readonly ScriptedSensor _sensor = new("everything", All);
    private readonly RecordingLight _light = new();
    private readonly FedSystemd _systemd = new();
    private readonly SnapshotBoard _board;
    private readonly AssessmentLoop _loop;
    private readonly SensorPoller _poller;
    private double _marginC = 4;
    private bool _solverFails;
    private bool _defect;

    public AssessmentLoopTests()
    {
        VerdictPolicy policy = new() { DwellS = 5 };
        _board = new SnapshotBoard([_sensor], new ClockProof(_time, mustBeSynchronised: false, () => false), _time);
        _poller = new SensorPoller([_sensor], _board, _time, NullLogger<SensorPoller>.Instance);
        _loop = new AssessmentLoop(
            _board, new Assessor(policy, Answer, altitudeM: 0), new VerdictDwell(policy), Coat, new WarmingTrail(), _light, new AssessmentFanOut([]),
            new SystemdWatchdog(_systemd), _time, NullLogger<AssessmentLoop>.Instance);
        _sensor.Answer = GoodShop;
    }

    private static CoatPlan Coat { get; } = new()
    {
        Description = "test coat",
        CupMl = 100,
        Kind = CoatKind.Clear,
        Ladder = [],
        LoadedRetarderPct = 5,
        WetFilmUm = 75,
        Substrate = new Substrate("wood", 0.004, 0.15, 0.77e6),
        AirSpeedMPerS = 0.5,
    };

    [Fact]
    public void Tick_WithGoodAirHeldForTheDwell_LightsSpray()
    {
        Run(seconds: 6);

        Assert.Equal(Verdict.Wait, _light.Shown[0]);
        Assert.Equal(Verdict.Spray, _light.Shown[^1]);
    }

    [Fact]
    public void Tick_WhenTheMarginGoes_LightsWaitOnThatTick()
    {
        Run(seconds: 6);
        _marginC = -0.5;

        Run(seconds: 1);

        Assert.Equal(Verdict.Wait, _light.Shown[^1]);
    }

    [Fact]
    public void Tick_WhenTheSensorDies_LightsWaitOnceTheReadingIsStale()
    {
        Run(seconds: 6);
        _sensor.Answer = () => SensorAnswer.NoReading("no acknowledge");

        Run(seconds: 5);

        Assert.Equal(Verdict.Wait, _light.Shown[^1]);
        Assert.Contains("no acknowledge", _loop.Tick().Reasons[0].Finding, StringComparison.Ordinal);
    }

    [Fact]
    public void Tick_WhenThePollerHangs_LightsWaitThoughTheLoopGoesOn()
    {
        Run(seconds: 6);

        for (int s = 0; s < 6; s++)
        {
            _time.Advance(TimeSpan.FromSeconds(1));
            _loop.Tick();
        }

        Assert.Equal(Verdict.Wait, _light.Shown[^1]);
    }

    [Fact]
    public void Tick_WhenTheSolverGivesUp_LightsWait()
    {
        Run(seconds: 6);
        _solverFails = true;

        Run(seconds: 1);

        Assert.Equal(Verdict.Wait, _light.Shown[^1]);
    }

    [Fact]
    public async Task Loop_WithAnOutputThatHangsForever_KeepsTheLightInTime()
    {
        HangingOutput hanging = new();
        OutputPump pump = new(hanging, new OutputPumpOptions { Capacity = 10 }, _time, NullLogger<OutputPump>.Instance);
        await pump.StartAsync(CancellationToken.None);
        AssessmentLoop loop = new(
            _board, new Assessor(new VerdictPolicy { DwellS = 5 }, Answer, 0), new VerdictDwell(new VerdictPolicy { DwellS = 5 }), Coat, new WarmingTrail(), _light,
            new AssessmentFanOut([pump]), new SystemdWatchdog(), _time, NullLogger<AssessmentLoop>.Instance);

        for (int s = 0; s < 500; s++)
        {
            _poller.Sweep();
            loop.Tick();
            _time.Advance(TimeSpan.FromSeconds(1));
        }

        Assert.Equal(500, _light.Shown.Count);
        Assert.Equal(Verdict.Spray, _light.Shown[^1]);
        Assert.True(pump.Health.Dropped > 0);
        hanging.Release.SetResult();
        await pump.StopAsync(CancellationToken.None);
        loop.Dispose();
    }

    [Fact]
    public async Task Stop_WhileSpraying_LightsWaitAtOnce()
    {
        await StartAndSprayAsync();

        await _loop.StopAsync(CancellationToken.None);

        Assert.Equal(Verdict.Wait, _light.Shown[^1]);
    }

    [Fact]
    public async Task Exception_InATick_LightsWaitAtOnceAndIsNotHidden()
    {
        await StartAndSprayAsync();
        _defect = true;

        _time.Advance(AssessmentLoop.Interval);

        await Assert.ThrowsAsync<FormatException>(() => _loop.ExecuteTask!.WaitAsync(TimeSpan.FromSeconds(30)));
        Assert.Equal(Verdict.Wait, _light.Shown[^1]);
    }

    [Fact]
    public void Watchdog_IsFedOnlyWhileTheLightIsAlive()
    {
        Run(seconds: 3);
        Assert.Equal(3, _systemd.Fed);

        _light.IsAlive = false;
        Run(seconds: 3);
        Assert.Equal(3, _systemd.Fed);

        _light.IsAlive = true;
        Run(seconds: 1);
        Assert.Equal(4, _systemd.Fed);
    }

    public void Dispose()
    {
        _loop.Dispose();
        _poller.Dispose();
    }

    private void Run(int seconds)
    {
        for (int s = 0; s < seconds; s++)
        {
            _time.Advance(TimeSpan.FromSeconds(1));
            _poller.Sweep();
            _loop.Tick();
        }
    }

    private async Task StartAndSprayAsync()
    {
        await _loop.StartAsync(CancellationToken.None);
        for (int tick = 1; tick <= 7; tick++)
        {
            int done = tick;
            Assert.True(SpinWait.SpinUntil(() => _light.Shown.Count >= done, TimeSpan.FromSeconds(30)));
            _poller.Sweep();
            _time.Advance(AssessmentLoop.Interval);
        }

        Assert.True(SpinWait.SpinUntil(() => _light.Shown.Count >= 8, TimeSpan.FromSeconds(30)));
        Assert.Equal(Verdict.Spray, _light.Shown[^1]);
    }

    private SensorAnswer GoodShop()
    {
        // Real air never stands still to the last bit.
        double noise = 0.01 * (_sensor.Asked % 7);
        return SensorAnswer.Of(
            new Sample(Quantity.BoothTemperature, 21 + noise, 0.1),
            new Sample(Quantity.BoothHumidity, 45 + noise, 1),
            new Sample(Quantity.IntakeTemperature, 15 + noise, 0.1),
            new Sample(Quantity.IntakeHumidity, 60 + noise, 1),
            new Sample(Quantity.StationPressure, 101_300 + noise, 50),
            new Sample(Quantity.PieceTemperature, 20.5 + noise, 0.3),
            new Sample(Quantity.ExhaustProof, 1, 0),
            new Sample(Quantity.FilterPressureDrop, 40 + noise, 2));
    }

    private BlushAnswer Answer(
        CoatPlan plan, Air.MoistAir air, double pieceTemperatureC, Air.AirUncertainty airUncertainty, double pieceUncertaintyC, double requiredMarginC, double coverageFactor) =>
        _defect ? throw new FormatException("a defect")
            : _solverFails ? throw new DryingFailedException("a test made it fail")
            : new BlushAnswer
            {
                RetarderPct = 5,
                TimeToSetS = 300,
                LowestFilmTemperatureC = 15,
                WaterAtSetGPerM2 = 0,
                CriticalHumidityPct = 75,
                CriticalDewPointC = air.DewPointC + _marginC,
                BlushMarginC = _marginC,
                MarginUncertaintyC = 0.4,
                RecommendedRetarderPct = 0,
                MarginAtHighestRetarderC = 8,
                SolventTrappingRisk = false,
            };

    private sealed class RecordingLight : IVerdictLight
    {
        public List<Verdict> Shown { get; } = [];

        public bool IsAlive { get; set; } = true;

        public void Show(Verdict verdict) => Shown.Add(verdict);
    }

    private sealed class FedSystemd : ISystemdNotifier
    {
        public bool IsEnabled => true;

        public int Fed { get; private set; }

        public void Notify(ServiceState state) => Fed += state.ToString() == "WATCHDOG=1" ? 1 : 0;
    }

    private sealed class HangingOutput : IAssessmentOutput
    {
        public string Name => "hanging";

        public TaskCompletionSource Release { get; } = new();

        public Task HandleAsync(Assessment assessment, CancellationToken cancellationToken) => Release.Task;
    }
}
