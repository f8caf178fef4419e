using BoothWatch.Checks;
using BoothWatch.Film;
using BoothWatch.Readings;
using BoothWatch.Service.Assessing;
using BoothWatch.Service.Checks;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Sensors;
using BoothWatch.Service.Tests.Assessing;
using BoothWatch.Service.Tests.Outputs.Series;
using BoothWatch.Verdicts;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;

namespace BoothWatch.Service.Tests.Checks;

/// <summary>A booth whose air would always be good for spray, were it known: what keeps the verdict at wait here is a check and nothing else.</summary>
internal sealed class CheckShop : IDisposable
{
    private static readonly CoatPlan Coat = new()
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

    private readonly ScriptedSensor[] _sensors;
    private readonly Random _random = new(1);
    private Journal? _provingJournal;

    public CheckShop(bool withSpare = false)
    {
        Folder.Time.SetUtcNow(new DateTimeOffset(2026, 11, 25, 9, 0, 0, TimeSpan.Zero));
        ScriptedSensor booth = new("boothAir", Quantity.BoothTemperature, Quantity.BoothHumidity);
        ScriptedSensor spare = new("boothAirCheck", Quantity.BoothTemperature, Quantity.BoothHumidity);
        ScriptedSensor rest = new("rest", Quantity.PieceTemperature, Quantity.ExhaustProof, Quantity.StationPressure, Quantity.FilterPressureDrop);
        booth.Answer = () => BoothIsSilent ? SensorAnswer.NoReading("no acknowledge") : Air(BoothC, BoothPct);
        spare.Answer = () => Air(22, SparePct);
        rest.Answer = () => SensorAnswer.Of(
            new Sample(Quantity.PieceTemperature, 21.5 + Noise(), 0.3),
            new Sample(Quantity.ExhaustProof, 1, 0),
            new Sample(Quantity.StationPressure, 101_300 + Noise(), 50),
            new Sample(Quantity.FilterPressureDrop, 40 + Noise(), 2));
        _sensors = withSpare ? [booth, spare, rest] : [booth, rest];
        (Book, Board) = Start();
    }

    public JournalFolder Folder { get; } = new();

    public FakeTimeProvider Time => Folder.Time;

    public double BoothPct { get; set; } = 45;

    public double BoothC { get; set; } = 22;

    public double SparePct { get; set; } = 46;

    public bool BoothIsSilent { get; set; }

    public CheckBook Book { get; private set; }

    public SnapshotBoard Board { get; private set; }

    public HoldFile File => new(Folder.Location);

    /// <summary>The verdict before the dwell, from what the board shows now.</summary>
    public Verdict Verdict => Assessment.Verdict;

    public Assessment Assessment => new Assessor(new VerdictPolicy(), Answer, altitudeM: 0).Assess(Board.Take(), Coat);

    public Reading Humidity => Board.Take()[Quantity.BoothHumidity];

    /// <summary>Begins as the page does.</summary>
    public void Begin(string sensor = "boothAir") => Book.Begin(sensor, Board.SpareAgrees(sensor));

    /// <summary>Lets time pass, the sensors being asked every 10 s. Fails when the verdict is ever better than given.</summary>
    public void Run(double minutes, Verdict best = BoothWatch.Verdicts.Verdict.Spray)
    {
        for (int i = 0; i < minutes * 6; i++)
        {
            Time.Advance(TimeSpan.FromSeconds(10));
            Ask();
            BoothSnapshot snapshot = Board.Take();
            Book.Tick(snapshot);
            if (best < BoothWatch.Verdicts.Verdict.Spray)
            {
                Assert.InRange(new Assessor(new VerdictPolicy(), Answer, altitudeM: 0).Assess(snapshot, Coat).Verdict, BoothWatch.Verdicts.Verdict.Wait, best);
            }
        }
    }

    /// <summary>From the beginning to a result over a salt, of a sensor that reads so much in the jar.</summary>
    public void TakeResult(SaltPoint salt, double readPct, Verdict best = BoothWatch.Verdicts.Verdict.Wait)
    {
        Begin();
        BoothPct = readPct;
        Book.PutInJar("boothAir", salt);
        Run(121, best);
        Book.TakeResult("boothAir");
    }

    /// <summary>A whole check over a salt, the sensor being off by so much.</summary>
    public void CheckOver(SaltPoint salt, double offPct, Verdict best = BoothWatch.Verdicts.Verdict.Wait)
    {
        TakeResult(salt, salt.HumidityPct(BoothC) + offPct, best);
        BoothPct = 45;
        Book.SayBack("boothAir", cancelled: false, certain: false);
        Run(40);
    }

    /// <summary>The names of the two sensors of the booth air are swapped in the configuration; what hangs where and measures what stays. Holds at the next start.</summary>
    public void SwapNames()
    {
        (_sensors[0].Description, _sensors[1].Description) = (_sensors[1].Description, _sensors[0].Description);
        (_sensors[0].Answer, _sensors[1].Answer) = (_sensors[1].Answer, _sensors[0].Answer);
    }

    /// <summary>A book of the time when parts were proved one at a time: its journal is the one of the demo.</summary>
    public CheckBook WhileProving()
    {
        JournalLocation demo = new(Path.Combine(Folder.Folder, JournalLocation.DemoFileName), IsDemo: true);
        _provingJournal ??= new Journal(demo, TimeSpan.FromSeconds(10), Time, NullLogger<Journal>.Instance);
        return new(new CheckStore(_provingJournal, demo), new HoldFile(demo), _sensors, CheckLimits.Of(new ChecksOptions()), Time, NullLogger<CheckBook>.Instance);
    }

    /// <summary>A new process on the same files: nothing of the old one is closed, as after a kill.</summary>
    public void Restart()
    {
        (Book, Board) = Start();
        Ask();
    }

    public CheckHistory History(string sensor = "boothAir") => Book.Look(sensor, (history, _, _) => history);

    public RunningCheck? Running(string sensor = "boothAir") => Book.Look(sensor, (_, running, _) => running);

    public SettlingState? State(string sensor = "boothAir") => Book.Look(sensor, (_, running, now) => running?.StateAt(now));

    public void Dispose()
    {
        _provingJournal?.Dispose();
        Folder.Dispose();
    }

    private (CheckBook Book, SnapshotBoard Board) Start()
    {
        CheckBook book = new(
            new CheckStore(Folder.Journal(), Folder.Location), File, _sensors, CheckLimits.Of(new ChecksOptions()), Time, NullLogger<CheckBook>.Instance);
        return (book, new SnapshotBoard(_sensors, new ClockProof(Time, mustBeSynchronised: false, () => false), Time, isProving: false, book.Holds));
    }

    public void Ask()
    {
        foreach (ScriptedSensor sensor in _sensors)
        {
            Board.Post(sensor, sensor.Read());
        }
    }

    private static BlushAnswer Answer(
        CoatPlan plan, BoothWatch.Air.MoistAir air, double pieceTemperatureC, BoothWatch.Air.AirUncertainty airUncertainty, double pieceUncertaintyC, double requiredMarginC, double coverageFactor) =>
        new()
        {
            RetarderPct = 5,
            TimeToSetS = 300,
            LowestFilmTemperatureC = 15,
            WaterAtSetGPerM2 = 0,
            CriticalHumidityPct = 90,
            CriticalDewPointC = air.DewPointC + 8,
            BlushMarginC = 8,
            MarginUncertaintyC = 0.4,
            RecommendedRetarderPct = 0,
            MarginAtHighestRetarderC = 9,
            SolventTrappingRisk = false,
        };

    private SensorAnswer Air(double temperatureC, double pct) => SensorAnswer.Of(
        new Sample(Quantity.BoothTemperature, temperatureC + Noise(), 0.23), new Sample(Quantity.BoothHumidity, pct + Noise(), 2.07));

    private double Noise() => 0.02 * (_random.NextDouble() - 0.5);
}
