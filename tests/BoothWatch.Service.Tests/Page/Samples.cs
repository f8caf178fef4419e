using System.Collections.Immutable;
using BoothWatch.Readings;
using BoothWatch.Service.Page;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Tests.Page;

/// <summary>Assessments made by hand: a fair morning, a damp noon and rain at the corner booth of Harbour Lane.</summary>
public static class Samples
{
    public static DateTimeOffset Noon { get; } = new(2026, 6, 3, 12, 0, 0, TimeSpan.Zero);

    public static PageSources Sources { get; } = new()
    {
        Shop = "Harbour Lane",
        Booth = "corner",
        Sensors =
        [
            new SensorLine("boothAir", "SHT4x at 0x44 on bus 1 (emulated)", true, [Quantity.BoothTemperature, Quantity.BoothHumidity]),
            new SensorLine("intakeAir", "BME280 at 0x76 on bus 1 (emulated)", true, [Quantity.IntakeTemperature, Quantity.IntakeHumidity, Quantity.StationPressure]),
            new SensorLine("piece", "MLX90614 at 0x5A on bus 1 (emulated)", true, [Quantity.PieceTemperature]),
        ],
        Outputs = () => [new OutputLine("series", true, "4210 written"), new OutputLine("light", true, "")],
        Demo = () => new DemoMoment("13:40", "rain arrives", 135),
    };

    public static Assessment Spray { get; } = Make(Verdict.Spray, 22.4, 54.2, 12.7, 20.9, 3.4, 4, 5,
        new Reason("blush-margin", Verdict.Spray, "dew point 12.7 °C, 3.4 °C below what this mix holds", "spray"));

    public static Assessment SlowDown { get; } = Make(Verdict.SlowDown, 22.9, 71.6, 17.6, 20.6, 0.9, 9, 5,
        new Reason("blush-margin", Verdict.SlowDown, "dew point 17.6 °C, only 0.9 °C below what this mix holds", "add 12 mL more retarder (to 9 %), or lay thin coats and watch the film"),
        new Reason("piece-near-dew-point", Verdict.SlowDown, "piece 20.6 °C, 3.0 °C above the dew point", "let it warm before the next coat"));

    public static Assessment Wait { get; } = Make(Verdict.Wait, 22.1, 91.3, 20.6, 20.2, -1.7, null, 15,
        new Reason("blush-margin", Verdict.Wait, "dew point 20.6 °C, 1.7 °C over what this mix holds even at 15 % retarder", "wait for drier air"),
        new Reason("piece-near-dew-point", Verdict.Wait, "piece 20.2 °C is 0.4 °C below the dew point: dew forms on it", "wait, and warm the piece"),
        new Reason("filter-loaded", Verdict.SlowDown, "filter drop 138 Pa, over the 120 Pa of a loaded filter", "change the filter"));

    /// <summary>A piece that was brought in under the dew point, on its way to being warm.</summary>
    public static Assessment Cold { get; } = Make(Verdict.Wait, 21.0, 47.5, 9.4, 8.8, 3.1, 0, 5,
        new Reason("piece-near-dew-point", Verdict.Wait, "piece 8.8 °C, 0.6 °C under the dew point", "wait, and warm the piece to 16.0 °C or more, in this air about 25 min (15 to 40 min)")) with
    {
        Warming = new PieceWarming
        {
            State = WarmingState.Warming,
            TargetC = 16.0,
            TargetFrom = WarmingTarget.Air,
            ClearanceC = -0.6,
            LeftS = 1500,
            LeastS = 900,
            MostS = 2400,
            Basis = WarmingBasis.Model,
            CoreColderC = 3.4,
        },
    };

    /// <summary>The same piece, just warm.</summary>
    public static Assessment JustWarm { get; } = Spray with
    {
        Warming = new PieceWarming { State = WarmingState.Warm, TargetC = 16.0, TargetFrom = WarmingTarget.Air, ClearanceC = 8.2, WarmSinceS = 60 },
    };

    /// <summary>As many and as long reasons as the rules of a damp, cold, badly kept booth give at once.</summary>
    public static Assessment Wordy { get; } = SlowDown with
    {
        Reasons =
        [
            new Reason("blush-margin", Verdict.SlowDown, "dew point 17.6 °C, 0.9 °C under what this mix holds, 1.7 °C wanted", "no retarder level gives the full margin, the highest would make it 1.4 °C, lay thin coats and watch the film, or wait for drier air"),
            new Reason("too-cold", Verdict.SlowDown, "air 14.2 °C, under 15.0 °C", "lay thin coats, expect slow drying, and leave longer between coats"),
            new Reason("piece-against-air", Verdict.SlowDown, "piece 12.1 °C, 7.6 °C colder than the air", "let it warm in the booth to 14.7 °C first"),
            new Reason("much-retarder", Verdict.SlowDown, "15 % retarder in the cup, over 10 %", "lay thin coats flat, expect runs and slow drying, leave longer between coats"),
            new Reason("filter-loaded", Verdict.SlowDown, "filter drop 138 Pa, over the 125 Pa of a loaded filter", "change the filter"),
        ],
    };

    public static Assessment Blind { get; } = Spray with
    {
        Verdict = Verdict.Wait,
        Air = null,
        Film = null,
        Reasons = [new Reason("booth-air-known", Verdict.Wait, "no reading from boothAir: CRC of the humidity word is wrong", "wait, and check its cable")],
        Snapshot = new BoothSnapshot(Noon, true, new[]
        {
            new Reading(Quantity.BoothTemperature, "boothAir", null, 0, TimeSpan.FromSeconds(7), ReadingQuality.NoReading, "CRC of the humidity word is wrong"),
        }.ToImmutableDictionary(r => r.Quantity)),
    };

    private static Assessment Make(
        Verdict verdict, double temperature, double humidity, double dewPoint, double piece, double margin, double? retarder, double at, params Reason[] reasons) => new()
        {
            Time = Noon,
            Verdict = verdict,
            Reasons = [.. reasons],
            Air = new AirFindings(temperature, humidity, 101_325, dewPoint, 0.4, 0.0117, piece),
            Film = new FilmFindings
            {
                Coat = "clear",
                Mix = "lacquer 1 : thinner 1",
                CupMl = 300,
                LoadedRetarderPct = 5,
                RetarderPct = at,
                TimeToSetS = 410,
                LowestFilmTemperatureC = temperature - 6.2,
                WaterAtSetGPerM2 = verdict == Verdict.Wait ? 0.8 : 0,
                CriticalHumidityPct = humidity + (margin * 4),
                CriticalDewPointC = dewPoint + margin,
                BlushMarginC = margin,
                MarginUncertaintyC = 0.7,
                RecommendedRetarderPct = retarder,
                MarginAtHighestRetarderC = margin + 3,
                SolventTrappingRisk = false,
            },
            Snapshot = new BoothSnapshot(Noon, true, new[]
            {
                Good(Quantity.BoothTemperature, "boothAir", temperature, 0.1),
                Good(Quantity.BoothHumidity, "boothAir", humidity, 1.0),
                Good(Quantity.IntakeTemperature, "intakeAir", temperature - 2, 0.3),
                Good(Quantity.IntakeHumidity, "intakeAir", humidity + 5, 1.5),
                Good(Quantity.StationPressure, "intakeAir", 101_325, 100),
                Good(Quantity.PieceTemperature, "piece", piece, 0.3),
            }.ToImmutableDictionary(r => r.Quantity)),
        };

    private static Reading Good(Quantity quantity, string sensor, double value, double uncertainty) =>
        new(quantity, sensor, value, uncertainty, TimeSpan.FromSeconds(0.6), ReadingQuality.Good, null);
}
