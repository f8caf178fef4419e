using System.Collections.Immutable;
using BoothWatch.Air;
using BoothWatch.Readings;
using BoothWatch.Service.Advice;
using BoothWatch.Service.Coat;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Tests.Advice;

/// <summary>Answers made by hand, so that the text tests do not move with the model.</summary>
internal static class AdviseAnswers
{
    public static AdviseAnswer Answered(double? loadedPct = null, double? recommendedPct = 6, Verdict verdict = Verdict.Spray) => Make(
        loadedPct,
        verdict,
        new FilmFindings
        {
            Coat = "clear",
            Mix = "nitrocellulose lacquer, unthinned; retarder 2-butoxyethanol",
            CupMl = 250,
            LoadedRetarderPct = loadedPct,
            RetarderPct = loadedPct ?? recommendedPct ?? 15,
            TimeToSetS = 190.4,
            LowestFilmTemperatureC = 20.26,
            WaterAtSetGPerM2 = 0.0123,
            CriticalHumidityPct = 84.26,
            CriticalDewPointC = 21.17,
            BlushMarginC = 2.531,
            MarginUncertaintyC = 0.7014,
            RecommendedRetarderPct = recommendedPct,
            MarginAtHighestRetarderC = 3.14,
            SolventTrappingRisk = false,
        },
        new Reason("blush-margin", verdict, "dew point 18.6 °C, 2.5 °C under what that mix holds", "mix 6 % retarder and spray"));

    public static AdviseAnswer NotAnswered() => Make(
        null, Verdict.Wait, null, new Reason("no-film-answer", Verdict.Wait, "the film model gave no answer", "wait"));

    private static AdviseAnswer Make(double? loadedPct, Verdict verdict, FilmFindings? film, Reason reason) => new(
        new AdviseRequest
        {
            Air = MoistAir.FromRelativeHumidity(24, 72, 101_325),
            PieceC = 24,
            Coat = new CoatOptions { LacquerParts = 1, ThinnerParts = 0, WetFilmUm = 75, LoadedRetarderPct = loadedPct },
            Mix = null,
            Substrate = null,
            TemperatureToleranceC = 0.2,
            HumidityTolerancePct = 2,
            RequiredMarginC = null,
            Assumed = ["the piece is as warm as the air: no piece temperature was given"],
        },
        "wood",
        4,
        new Assessment
        {
            Time = DateTimeOffset.UnixEpoch,
            Snapshot = new BoothSnapshot(DateTimeOffset.UnixEpoch, true, ImmutableDictionary<Quantity, Reading>.Empty),
            Air = new AirFindings(24, 72, 101_325, 18.643, 0.279, 0.0135, 24),
            Film = film,
            Warming = new PieceWarming { State = WarmingState.Warm, TargetC = 21.643, TargetFrom = WarmingTarget.DewPoint, ClearanceC = 5.357 },
            Verdict = verdict,
            Reasons = [reason],
        },
        0.5);
}
