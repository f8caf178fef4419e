using BoothWatch.Air;
using BoothWatch.Film;
using BoothWatch.Jobs;
using BoothWatch.Reviews;
using BoothWatch.Solvents;
using BoothWatch.Tests.Film;
using BoothWatch.Verdicts;

namespace BoothWatch.Tests.Reviews;

/// <summary>A clear coat at the Harbour Lane shop, landed at noon UTC, in air that a test makes up.</summary>
internal static class SampleReview
{
    public const double AirC = 24;
    public const double PressurePa = 101325;

    public static readonly DateTimeOffset Noon = new(2026, 6, 3, 12, 0, 0, TimeSpan.Zero);

    public static readonly AirUncertainty Uncertainty = new(0.23, 2.1);

    public const double PieceUncertaintyC = 0.6;

    /// <summary>Dew point at which the usual coat just blushes in air and on a piece of 24 °C, °C, by the ordinary search.</summary>
    public static double LimitC(double retarderPct = 0, double wetFilmUm = 75, double? pieceC = null, Mix? cup = null) => CriticalHumidity.Find(
        TestCoat.Conditions(Cup(retarderPct, cup), AirC, pieceC, wetFilmUm)).DewPointC;

    /// <summary>A cup whose film of 500 µm stays open for more than 20 minutes.</summary>
    public static Mix SlowCup => TestCoat.NitrateIn("n-butyl acetate");

    public static ReviewCase Case(
        RecordedAir air, CoatOutcome? outcome = CoatOutcome.Blushed, double retarderPct = 0, double wetFilmUm = 75, double airSpeed = 0.5, double? recommendedPct = null,
        Mix? cup = null, double usualUm = 75)
    {
        CoatMix ids = new("nitrocellulose lacquer", 1, "ordinary thinner", 0, "2-butoxyethanol", retarderPct);
        CoatPlan plan = TestCoat.Plan(cup ?? TestCoat.Unthinned, retarderPct) with { WetFilmUm = wetFilmUm, AirSpeedMPerS = airSpeed };
        return new ReviewCase
        {
            Details = new CoatDetails { Kind = CoatKind.Clear, Mix = ids, WetFilmUm = wetFilmUm, Substrate = "wood", AirSpeedMPerS = airSpeed, Start = Noon },
            Outcome = outcome,
            Plan = plan,
            Usual = new UsualCoat(ids, Cup(retarderPct, cup), cup ?? TestCoat.Unthinned, usualUm, 0.5),
            RecommendedRetarderPct = recommendedPct,
            Air = air,
            PressurePa = PressurePa,
            AirUncertainty = Uncertainty,
            PieceUncertaintyC = PieceUncertaintyC,
            Policy = new VerdictPolicy(),
            Zone = TimeZoneInfo.Utc,
        };
    }

    /// <summary>Minutes from 08:00 to 20:00; what is null was not recorded. The function is given minutes since noon.</summary>
    public static RecordedAir Recorded(Func<int, (double AirC, double DewPointC, double? PieceC)?> at)
    {
        List<AirMoment> moments = [];
        for (int minute = -240; minute < 480; minute++)
        {
            if (at(minute) is var (airC, dewPointC, pieceC))
            {
                moments.Add(new AirMoment(Noon.AddMinutes(minute), TimeSpan.FromMinutes(1), airC, dewPointC, pieceC, Verdict.Spray));
            }
        }

        return new RecordedAir(moments);
    }

    public static RecordedAir Constant(double dewPointC, double? pieceC = AirC, double airC = AirC) => Recorded(_ => (airC, dewPointC, pieceC));

    private static Mix Cup(double retarderPct, Mix? cup) => TestCoat.Retarded(cup ?? TestCoat.Unthinned, retarderPct);
}
