using System.Globalization;
using BoothWatch.Film;
using BoothWatch.Verdicts;

namespace BoothWatch.Reviews;

/// <summary>Finds what would have held: one thing done otherwise, all else as it was, and the coat run again in the recorded air.</summary>
internal sealed class RemedyFinder(ReviewCase coat, Replay sprayed, double wantedMarginC, TimeSpan horizon)
{
    private const double FilmStepUm = 5;
    private const double PieceStepC = 0.5;

    /// <summary>Other starts are tried on this grid. Own choice.</summary>
    private static readonly TimeSpan StartStep = TimeSpan.FromMinutes(10);

    private readonly TemperatureText _text = new(coat.Policy.TemperatureUnit);
    private readonly CoatConditions _own = sprayed.Conditions;

    /// <summary>The remedies: those that hold first, then in the order in which a finisher would think of them.</summary>
    public IReadOnlyList<ReviewRemedy> Find() =>
        [.. new[] { Retarder(), ThinnerFilm(), WarmerPiece(), Later(), Earlier() }.OfType<ReviewRemedy>().OrderByDescending(remedy => remedy.Holds)];

    private ReviewRemedy Retarder()
    {
        IReadOnlyList<(double RetarderPct, Solvents.Mix Mix)> ladder = coat.Plan.Ladder;
        Replay Level(int at) => sprayed.With(_own with { Mix = ladder[at].Mix });
        int? sure = LeastThatCovers(ladder.Count, Level);
        int? edge = RetarderLevel.Recommend(ladder.Count, at => Level(at).Holds(0));
        double? edgePct = edge is { } e ? ladder[e].RetarderPct : null;
        if (sure is { } found)
        {
            double pct = ladder[found].RetarderPct;
            string edgeWords = edgePct < pct && edgePct > coat.RetarderPct ? Text($"; {edgePct:0.##} % would have been the very edge") : "";
            return new(ReviewRemedyKind.Retarder, true, pct, edgePct, null, Text($"{pct:0.##} % of retarder"), Text($"{pct:0.##} % of retarder, where {coat.RetarderPct:0.##} % was in the cup{edgeWords}"));
        }

        double shortC = wantedMarginC - Level(ladder.Count - 1).MarginC;
        string near = edgePct is { } only ? Text($"; {only:0.##} % only just") : "";
        return new(ReviewRemedyKind.Retarder, false, null, edgePct, null, "", Text($"no level of the ladder: even {ladder[^1].RetarderPct:0.##} % leaves the wanted margin short by {_text.By(shortC)}{near}"));
    }

    // The least level with its own uncertainty, which takes many runs: so it is guessed with that of the coat as sprayed, and then put right.
    private int? LeastThatCovers(int levels, Func<int, Replay> level)
    {
        int at = RetarderLevel.Recommend(levels, i => level(i).Holds(wantedMarginC)) ?? levels - 1;
        while (!level(at).Covers(coat))
        {
            if (++at == levels)
            {
                return null;
            }
        }

        while (at > 0 && level(at - 1).Covers(coat))
        {
            at--;
        }

        return at;
    }

    private ReviewRemedy? ThinnerFilm()
    {
        // Half the usual film: less is mist, not a coat.
        int least = (int)Math.Ceiling(Math.Min(coat.Usual.WetFilmUm / 2, _own.WetFilmUm / 2) / FilmStepUm);
        int most = (int)Math.Ceiling(_own.WetFilmUm / FilmStepUm) - 1;
        if (most < least)
        {
            return null;
        }

        double? Thickest(double marginC) => RetarderLevel.Recommend(most - least + 1, at => With((most - at) * FilmStepUm).Holds(marginC)) is { } found ? (most - found) * FilmStepUm : null;
        Replay With(double um) => sprayed.With(_own with { WetFilmUm = um });
        double? sure = Thickest(wantedMarginC);
        double? edge = Thickest(0);
        string edgeWords = edge > (sure ?? 0) ? Text($"; {edge:0} µm would have been the very edge") : "";
        return sure is { } um
            ? new(ReviewRemedyKind.ThinnerFilm, true, um, edge, null, Text($"a wet film of {um:0} µm or less"), Text($"a wet film of {um:0} µm or less, where {_own.WetFilmUm:0} µm was laid on{edgeWords}"))
            : new(ReviewRemedyKind.ThinnerFilm, false, null, edge, null, "", Text($"no thinner film: not even {least * FilmStepUm:0} µm{edgeWords}"));
    }

    private ReviewRemedy? WarmerPiece()
    {
        double highestC = sprayed.Air.Landing.TemperatureC + coat.Policy.SlowDownPieceWarmerC;
        double firstC = Math.Ceiling((_own.PieceTemperatureC + 0.01) / PieceStepC) * PieceStepC;
        int steps = (int)Math.Floor((highestC - firstC) / PieceStepC) + 1;
        if (steps < 1)
        {
            return null;
        }

        double? Coldest(double marginC) => RetarderLevel.Recommend(steps, at => With(firstC + (at * PieceStepC)).Holds(marginC)) is { } found ? firstC + (found * PieceStepC) : null;
        Replay With(double pieceC) => sprayed.With(_own with { PieceTemperatureC = pieceC });
        double? sure = Coldest(wantedMarginC);
        double? edge = Coldest(0);
        return sure is { } pieceC
            ? new(ReviewRemedyKind.WarmerPiece, true, pieceC, edge, null, $"a piece of {_text.Of(pieceC)} or more", $"a piece of {_text.Of(pieceC)} or more; it had {_text.Of(_own.PieceTemperatureC)}")
            : new(ReviewRemedyKind.WarmerPiece, false, null, edge, null, "", $"no warmer piece up to {_text.Of(firstC + ((steps - 1) * PieceStepC))}{(edge is { } only ? $"; from {_text.Of(only)} only just" : "")}");
    }

    private ReviewRemedy Later()
    {
        DateTimeOffset dayEnd = Midnight(1);
        DateTimeOffset? lastKnown = null;
        for (DateTimeOffset start = Round(coat.Landing) + StartStep; start < dayEnd; start += StartStep)
        {
            switch (HoldsAt(start))
            {
                case true:
                    string until = $"waiting until {ReviewTime.OfDay(start, coat.Zone)}";
                    return new(ReviewRemedyKind.Later, true, null, null, start, until, until);
                case false:
                    lastKnown = start;
                    break;
            }
        }

        string words = lastKnown is { } last
            ? $"no waiting that day: no start up to {ReviewTime.OfDay(last, coat.Zone)}, as far as the air is recorded"
            : "waiting: not known, for no air was recorded later that day";
        return new(ReviewRemedyKind.Later, false, null, null, null, "", words);
    }

    private ReviewRemedy? Earlier()
    {
        DateTimeOffset dayBegin = Midnight(0);
        for (DateTimeOffset start = Round(coat.Landing) - StartStep; start >= dayBegin; start -= StartStep)
        {
            if (HoldsAt(start) == true)
            {
                string at = $"spraying at {ReviewTime.OfDay(start, coat.Zone)} that day";
                return new(ReviewRemedyKind.Earlier, true, null, null, start, at, $"{at}: the last start before this one that holds, as far as the air is recorded");
            }
        }

        return null;
    }

    // Null: not known, for the air or the piece was not recorded until the coat would have set.
    private bool? HoldsAt(DateTimeOffset start)
    {
        if (coat.Air.At(start)?.PieceTemperatureC is not { } pieceC
            || coat.Air.CourseFrom(start, horizon) is not { } course
            || CoatConditionsCheck.Outside(course.Landing.TemperatureC, pieceC, _own.PressurePa) is not null
            || coat.Air.KnownUntil(start) is not { } knownUntil
            || knownUntil <= start)
        {
            return null;
        }

        Replay then = sprayed.With(_own with { PieceTemperatureC = pieceC }, course);
        if (!then.MayHold(wantedMarginC))
        {
            return false;
        }

        DryingResult run = then.RunRaised(wantedMarginC);
        return run.TimeToSetS is { } setS && start.AddSeconds(setS) <= knownUntil + RecordedAir.LongestBridge ? then.IsClear(run) : null;
    }

    private DateTimeOffset Midnight(int daysOn)
    {
        DateTime day = TimeZoneInfo.ConvertTime(coat.Landing, coat.Zone).Date.AddDays(daysOn);
        return new DateTimeOffset(day, coat.Zone.GetUtcOffset(day));
    }

    private static DateTimeOffset Round(DateTimeOffset time) => time.AddTicks(-(time.Ticks % StartStep.Ticks));

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
