using BoothWatch.Readings;
using BoothWatch.Verdicts;
using BoothWatch.Verdicts.Rules;
using FsCheck.Xunit;

namespace BoothWatch.Tests.Verdicts;

/// <summary>What must hold for every booth, not only for the tables.</summary>
public class VerdictProperties
{
    private static readonly Assessor Assessor = new(new VerdictPolicy(), FakeFilm.Ask, 0);

    private static readonly Quantity[] Needed =
    [
        Quantity.BoothTemperature, Quantity.BoothHumidity, Quantity.PieceTemperature, Quantity.ExhaustProof,
        Quantity.StationPressure, Quantity.FilterPressureDrop,
    ];

    private static readonly ReadingQuality[] Bad = [.. Enum.GetValues<ReadingQuality>().Where(quality => quality != ReadingQuality.Good)];

    private static readonly double[] Impossible = [double.NaN, double.PositiveInfinity, double.NegativeInfinity, -1e9, 1e9];

    /// <summary>A higher dew point at the same temperature never improves the verdict. From 30 %RH on: below it dry air is the trouble.</summary>
    [Property(MaxTest = 500)]
    public bool WorseAir_NeverImprovesTheVerdict(byte temperature, byte piece, byte humidity, byte more, byte loaded)
    {
        double temperatureC = 8 + (temperature / 255.0 * 30);
        double pieceC = temperatureC - 6 + (piece / 255.0 * 12);
        double humidityPct = 30 + (humidity / 255.0 * 69);
        double worsePct = humidityPct + ((99.4 - humidityPct) * more / 255.0);
        double? loadedPct = loaded < 128 ? null : loaded % 16;
        return Decide(temperatureC, worsePct, pieceC, loadedPct).Verdict <= Decide(temperatureC, humidityPct, pieceC, loadedPct).Verdict;
    }

    /// <summary>A colder piece never improves the verdict while it is not warmer than the air.</summary>
    [Property(MaxTest = 300)]
    public bool ColderPiece_NeverImprovesTheVerdict(byte humidity, byte piece, byte colder)
    {
        double humidityPct = 30 + (humidity / 255.0 * 69);
        double pieceC = 22 - (piece / 255.0 * 10);
        return Decide(22, humidityPct, pieceC - (colder / 255.0 * 10), null).Verdict <= Decide(22, humidityPct, pieceC, null).Verdict;
    }

    /// <summary>One reading that is bad in any way, in an otherwise good booth, never leaves spray.</summary>
    [Property(MaxTest = 500)]
    public bool ABadInput_NeverLeavesSpray(byte quantity, byte quality, byte value)
    {
        Quantity which = Needed[quantity % Needed.Length];
        Reading good = GoodBooth.Good(which, Impossible[value % Impossible.Length]);
        Reading bad = quality % (Bad.Length + 1) == Bad.Length
            ? good
            : good with { Quality = Bad[quality % Bad.Length], Value = value % 2 == 0 ? null : 22 };
        return Assessor.Assess(GoodBooth.Snapshot(bad), FakeFilm.Plan()).Verdict < Verdict.Spray;
    }

    /// <summary>A quantity that the policy requires and no sensor provides never leaves better than wait.</summary>
    [Property]
    public bool AMissingRequiredInput_IsWait(byte quantity)
    {
        Quantity[] required = [Quantity.BoothTemperature, Quantity.BoothHumidity, Quantity.PieceTemperature, Quantity.ExhaustProof];
        BoothSnapshot snapshot = GoodBooth.Snapshot().Without(required[quantity % required.Length]);
        return Assessor.Assess(snapshot, FakeFilm.Plan()).Verdict == Verdict.Wait;
    }

    /// <summary>Whatever the numbers, also those that are none: no exception, reasons in order, and spray only from sound figures.</summary>
    [Property(MaxTest = 1000)]
    public bool AnyNumbers_GiveOrderedReasonsAndNeverAnUnsoundSpray(
        double temperatureC, double humidityPct, double dewPointC, double? pieceC, double marginC, double? loadedPct, double? recommendedPct, double highestC)
    {
        Evidence evidence = GoodBooth.Evidence(
            air: GoodBooth.Air(temperatureC, humidityPct, dewPointC, pieceC),
            film: GoodBooth.Film(marginC, loadedPct, recommendedPct, marginAtHighestC: highestC));
        Reason[] reasons = [.. RuleBook.Decide(evidence)];
        bool ordered = reasons.Zip(reasons.Skip(1)).All(pair =>
            pair.First.Limit < pair.Second.Limit
            || (pair.First.Limit == pair.Second.Limit && pair.First.Severity >= pair.Second.Severity));
        bool sound = (double.IsFinite(marginC) && marginC >= 2)
            && (pieceC ?? temperatureC) - dewPointC >= 3
            && temperatureC is >= 15 and <= 30
            && humidityPct >= 30
            && (loadedPct ?? recommendedPct) is not null;
        return reasons.Length > 0
            && ordered
            && (reasons[0].Limit < Verdict.Spray || sound)
            && Array.TrueForAll(reasons, reason => reason.Finding.Length > 0 && reason.Action.Length > 0);
    }

    /// <summary>Whatever the rules decide over time, what is shown is never better than what they decide now.</summary>
    [Property(MaxTest = 300)]
    public bool Dwell_NeverShowsBetterThanDecided(byte[] ticks)
    {
        VerdictDwell dwell = new(TimeSpan.FromSeconds(3), TimeSpan.FromSeconds(5));
        TimeSpan now = TimeSpan.Zero;
        Assessment good = Assessor.Assess(GoodBooth.Snapshot(), FakeFilm.Plan());
        foreach (byte tick in ticks)
        {
            now += TimeSpan.FromSeconds(tick / 40);
            Verdict decided = (Verdict)(tick % 3);
            Assessment shown = dwell.Hold(good with { Verdict = decided }, now);
            if (shown.Verdict > decided || shown.Reasons.IsEmpty)
            {
                return false;
            }
        }

        return true;
    }

    private static Assessment Decide(double temperatureC, double humidityPct, double pieceC, double? loadedPct) => Assessor.Assess(
        GoodBooth.Snapshot(
            GoodBooth.Good(Quantity.BoothTemperature, temperatureC),
            GoodBooth.Good(Quantity.BoothHumidity, humidityPct, 0.5),
            GoodBooth.Good(Quantity.PieceTemperature, pieceC)),
        FakeFilm.Plan(loadedPct));
}
