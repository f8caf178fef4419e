using System.Globalization;
using BoothWatch.Air;
using BoothWatch.Film;
using BoothWatch.Jobs;
using BoothWatch.Verdicts;

namespace BoothWatch.Reviews;

/// <summary>
/// Finds what took a coat towards blush: one thing at a time is brought back to its reference, the coat is run again, and the margin
/// that comes back is what that thing cost.
/// </summary>
/// <remarks>
/// References: the air of the landing for what changed afterwards; the air temperature for the piece; what the shop usually sprays for
/// film, cup and air speed; 21 °C at the same humidity for hot air. The air itself has no reference of that kind, for drier air would
/// always clear a coat: it counts by as much as it was too wet for a usual coat on a piece as warm as the air.
/// </remarks>
internal sealed class CauseFinder(ReviewCase coat, Replay sprayed, double openS, double wantedMarginC)
{
    /// <summary>Less than this is not worth a word, °C.</summary>
    private const double LeastCostC = 0.1;

    /// <summary>Air below this is not called hot, °C. Assumed.</summary>
    private const double HotAboveC = 26;

    private readonly TemperatureText _text = new(coat.Policy.TemperatureUnit);
    private readonly AirStep _landing = sprayed.Air.Landing;
    private readonly CoatConditions _own = sprayed.Conditions;

    /// <summary>The causes, the one that cost most first; never empty.</summary>
    public IReadOnlyList<ReviewCause> Find()
    {
        ReviewCause[] found = [.. All().OfType<ReviewCause>().Where(cause => cause.CostC >= LeastCostC).OrderByDescending(cause => cause.CostC)];
        return found.Length > 0 ? found : [new ReviewCause(ReviewCauseKind.NearTheLimit, 0, $"nothing out of the usual; at a dew point of {_text.Of(_landing.DewPointC)} a coat {Retarder(coat.RetarderPct)} is at its limit")];
    }

    private IEnumerable<ReviewCause?> All()
    {
        yield return Wetter();
        yield return Cooled();
        yield return TooWet();
        yield return Cold();
        yield return Heavy();
        yield return Fast();
        yield return Draught();
        yield return Hot();
    }

    private ReviewCause? Wetter()
    {
        AirStep wettest = OpenSteps().MaxBy(step => step.DewPointC)!;
        return wettest.DewPointC - _landing.DewPointC < LeastCostC ? null : Cause(
            ReviewCauseKind.AirGrewWetter,
            sprayed.With(course: sprayed.Air.With(step => step with { DewPointC = _landing.DewPointC })),
            $"the air grew wetter while the film was open, from a dew point of {_text.Of(_landing.DewPointC)} to {_text.Of(wettest.DewPointC)} within {ReviewTime.Words(Math.Min(openS, Math.Max(wettest.FromS, 60)))} of the coat");
    }

    private ReviewCause? Cooled()
    {
        AirStep coldest = OpenSteps().MinBy(step => step.TemperatureC)!;
        return _landing.TemperatureC - coldest.TemperatureC < LeastCostC ? null : Cause(
            ReviewCauseKind.BoothCooled,
            sprayed.With(course: sprayed.Air.With(step => step with { TemperatureC = _landing.TemperatureC })),
            $"the booth cooled while the film was open, from {_text.Of(_landing.TemperatureC)} to {_text.Of(coldest.TemperatureC)}");
    }

    private ReviewCause? TooWet()
    {
        UsualCoat usual = coat.Usual;
        Replay coatOfTheShop = sprayed.With(
            _own with { Mix = usual.Mix, WetFilmUm = usual.WetFilmUm, AirSpeedMPerS = usual.AirSpeedMPerS, PieceTemperatureC = _landing.TemperatureC },
            AirCourse.Constant(_landing.TemperatureC, _landing.DewPointC));
        double overC = -coatOfTheShop.MarginC;
        if (overC < LeastCostC)
        {
            return null;
        }

        string over = $"its dew point of {_text.Of(_landing.DewPointC)} is {_text.By(overC)} more than a usual coat {Retarder(coat.RetarderPct)} holds";
        ReviewCause TooLittle(string then) => new(ReviewCauseKind.TooLittleRetarder, overC, $"too little retarder for air this wet; {over}, and {then}");
        if (coat.RecommendedRetarderPct is { } recommended && recommended > coat.RetarderPct)
        {
            return TooLittle($"{Pct(recommended)} was recommended");
        }

        IReadOnlyList<(double RetarderPct, Solvents.Mix Mix)> ladder = coat.Plan.Ladder;
        Replay Level(int at) => coatOfTheShop.With(coatOfTheShop.Conditions with { Mix = ladder[at].Mix });
        if (RetarderLevel.Recommend(ladder.Count, at => Level(at).Holds(0)) is not { } just || ladder[just].RetarderPct <= coat.RetarderPct)
        {
            return new(ReviewCauseKind.AirTooWet, overC, $"air too wet from the start; {over}", "No level of the retarder ladder carries even a usual coat.");
        }

        return RetarderLevel.Recommend(ladder.Count, at => Level(at).Holds(wantedMarginC)) is { } safe
            ? TooLittle($"{Pct(ladder[safe].RetarderPct)} would carry it through")
            : TooLittle($"{Pct(ladder[just].RetarderPct)} would just carry it, though no level with all the margin this shop wants");
    }

    private ReviewCause? Cold() => _own.PieceTemperatureC > _landing.TemperatureC - LeastCostC ? null : Cause(
        ReviewCauseKind.ColdPiece,
        sprayed.With(_own with { PieceTemperatureC = _landing.TemperatureC }),
        $"a cold piece, {_text.Of(_own.PieceTemperatureC)} in air of {_text.Of(_landing.TemperatureC)}");

    private ReviewCause? Heavy() => _own.WetFilmUm <= coat.Usual.WetFilmUm ? null : Cause(
        ReviewCauseKind.HeavyFilm,
        sprayed.With(_own with { WetFilmUm = coat.Usual.WetFilmUm }),
        Text($"a heavy film, {_own.WetFilmUm:0} µm wet where {coat.Usual.WetFilmUm:0} µm is usual"));

    private ReviewCause? Fast()
    {
        CoatMix own = coat.Details.Mix;
        CoatMix usual = coat.Usual.Cup;
        string what = own.Thinner != usual.Thinner && own.ThinnerParts > 0
            ? $"a cup that flashes off faster, with {own.Thinner} where {usual.Thinner} is usual"
            : Text($"a cup that flashes off faster, with {own.ThinnerParts:0.##} parts of thinner to {own.LacquerParts:0.##} of lacquer where {usual.ThinnerParts:0.##} to {usual.LacquerParts:0.##} is usual");
        return _own.Mix.Equals(coat.Usual.Mix) ? null : Cause(ReviewCauseKind.FastCup, sprayed.With(_own with { Mix = coat.Usual.Mix }), what);
    }

    private ReviewCause? Draught() => _own.AirSpeedMPerS <= coat.Usual.AirSpeedMPerS ? null : Cause(
        ReviewCauseKind.Draught,
        sprayed.With(_own with { AirSpeedMPerS = coat.Usual.AirSpeedMPerS }),
        Text($"a strong draught over the piece, {_own.AirSpeedMPerS:0.0#} m/s where {coat.Usual.AirSpeedMPerS:0.0#} m/s is usual"));

    private ReviewCause? Hot()
    {
        double byC = _landing.TemperatureC - DryingDelay.ReferenceTemperatureC;
        AirStep Cooler(AirStep step)
        {
            double temperatureC = step.TemperatureC - byC;
            double humidityPct = RelativeHumidity.FromDewPoint(step.TemperatureC, Math.Min(step.DewPointC, step.TemperatureC));
            return step with { TemperatureC = temperatureC, DewPointC = MoistAir.FromRelativeHumidity(temperatureC, humidityPct, _own.PressurePa).DewPointC };
        }

        return _landing.TemperatureC < HotAboveC ? null : Cause(
            ReviewCauseKind.HotAir,
            sprayed.With(_own with { PieceTemperatureC = _own.PieceTemperatureC - byC }, sprayed.Air.With(Cooler)),
            $"hot air of {_text.Of(_landing.TemperatureC)}, in which solvents leave fast and chill the film more");
    }

    private ReviewCause Cause(ReviewCauseKind kind, Replay without, string what)
    {
        double costC = without.MarginC - sprayed.MarginC;
        return new(kind, costC, $"{what}; that cost {_text.By(costC)} of margin");
    }

    private IEnumerable<AirStep> OpenSteps() => sprayed.Air.Steps.Where(step => step.FromS < openS).DefaultIfEmpty(_landing);

    private static string Retarder(double pct) => pct > 0 ? $"with {Pct(pct)} of retarder" : "without retarder";

    private static string Pct(double pct) => Text($"{pct:0.##} %");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
