using BoothWatch.Air;
using BoothWatch.Film;
using BoothWatch.Solvents;

namespace BoothWatch.Tests.Verdicts;

/// <summary>
/// Stands in for the film model where a test is about the verdict: each point of retarder lets the dew point rise by 0.5 °C,
/// from 12 °C at none. Not physics; only monotone in the same directions.
/// </summary>
internal static class FakeFilm
{
    // The stand-in looks at the level alone.
    public static readonly Mix AnyMix = new([], 1.0);

    public static CoatPlan Plan(double? loadedPct = null) => new()
    {
        Description = "clear coat, 1 part lacquer to 1 part thinner",
        CupMl = 200,
        Kind = CoatKind.Clear,
        Ladder = [.. Enumerable.Range(0, 16).Select(pct => ((double)pct, AnyMix))],
        LoadedRetarderPct = loadedPct,
        WetFilmUm = 75,
        Substrate = new Substrate("wood", 0.004, 0.15, 770_000),
        AirSpeedMPerS = 0.5,
    };

    public static BlushAnswer Ask(
        CoatPlan plan, MoistAir air, double pieceTemperatureC, AirUncertainty airUncertainty, double pieceUncertaintyC, double requiredMarginC, double coverageFactor)
    {
        double uncertaintyC = Math.Max(airUncertainty.OfDewPointC(air), pieceUncertaintyC / 10);
        double Margin(double pct) => 12 + (0.5 * pct) - air.DewPointC;
        double? recommended = plan.Ladder
            .Where(level => Margin(level.RetarderPct) >= requiredMarginC + (coverageFactor * uncertaintyC))
            .Select(level => (double?)level.RetarderPct)
            .FirstOrDefault();
        double highest = plan.Ladder[^1].RetarderPct;
        double used = plan.LoadedRetarderPct ?? recommended ?? highest;
        return new BlushAnswer
        {
            RetarderPct = used,
            TimeToSetS = 200 + (20 * used),
            LowestFilmTemperatureC = pieceTemperatureC - 8,
            WaterAtSetGPerM2 = Margin(used) < 0 ? 1 : 0,
            CriticalHumidityPct = 70,
            CriticalDewPointC = 12 + (0.5 * used),
            BlushMarginC = Margin(used),
            MarginUncertaintyC = uncertaintyC,
            RecommendedRetarderPct = recommended,
            MarginAtHighestRetarderC = Margin(highest),
            SolventTrappingRisk = false,
        };
    }
}
