using System.Globalization;

namespace BoothWatch.Verdicts;

/// <summary>
/// Says what to do to the cup, in the same words everywhere: how much retarder to add to what is in it, never to take any out.
/// </summary>
public static class RetarderDose
{
    private const double WholeFromMl = 50;

    /// <summary>The whole advice in one phrase, for example <c>add 12.5 mL more retarder (to 10 %)</c>.</summary>
    /// <param name="film">What the film model said.</param>
    public static string Advice(FilmFindings film)
    {
        ArgumentNullException.ThrowIfNull(film);
        if (film.RetarderToAddMl is not { } addMl)
        {
            return HoldsThinly(film) ? "no retarder level gives the full margin"
                : film.HoldsWithWarmPiece is true ? "no retarder level holds on so cold a piece: warm it first"
                : "no retarder level holds this air: wait";
        }

        return addMl > 0 ? Add(film)
            : film.LoadedRetarderPct is not > 0 ? "no retarder needed"
            : film.RecommendedRetarderPct is 0 ? $"the cup has {Level(film.LoadedRetarderPct)}, this air needs none: fine, it only dries slower"
            : $"in the cup {Level(film.LoadedRetarderPct)}: enough";
    }

    /// <summary>
    /// The few letters to be read from afar: an amount with a plus sign where retarder must be added, the level in the cup where it is enough,
    /// <c>Wait</c> where no level holds. A bare percentage never asks for anything.
    /// </summary>
    /// <param name="film">What the film model said.</param>
    public static string Mark(FilmFindings film)
    {
        ArgumentNullException.ThrowIfNull(film);
        return film.RetarderToAddMl switch
        {
            null when !HoldsThinly(film) => "Wait",
            > 0 => $"+{Amount(film.RetarderToAddMl)}",
            _ => $"{Level(film.LoadedRetarderPct ?? 0)}",
        };
    }

    /// <summary>
    /// The same reason for a cup of another size: whoever mixes 500 mL must not read the millilitres of 250. Only amounts change; levels do not.
    /// </summary>
    /// <param name="reason">A reason that was given for <paramref name="film"/>.</param>
    /// <param name="film">What the film model said.</param>
    /// <param name="cupMl">Unretarded mix in the other cup, mL.</param>
    public static Reason ForCup(Reason reason, FilmFindings film, double cupMl)
    {
        ArgumentNullException.ThrowIfNull(reason);
        ArgumentNullException.ThrowIfNull(film);
        FilmFindings other = film with { CupMl = cupMl };
        string Said(string words)
        {
            string added = film.RetarderToAddMl is null ? words : words.Replace(Add(film), Add(other), StringComparison.Ordinal);
            return film.RecommendedRetarderPct is { } level
                ? added.Replace(RetarderText.LevelForCup(level, film), RetarderText.LevelForCup(level, other), StringComparison.Ordinal)
                : added;
        }

        return reason with { Finding = Said(reason.Finding), Action = Said(reason.Action) };
    }

    /// <summary>What to add to the cup: to one that holds retarder already, only what is missing.</summary>
    internal static string Add(FilmFindings film) => film.LoadedRetarderPct is > 0
        ? $"add {Amount(film.RetarderToAddMl)} more retarder (to {Level(film.RecommendedRetarderPct)})"
        : $"add {Amount(film.RetarderToAddMl)} retarder to {Amount(film.CupMl)} of mix ({Level(film.RecommendedRetarderPct)})";

    // The cup is mixed and does not blush, but neither it nor any other level has the margin that is wanted.
    private static bool HoldsThinly(FilmFindings film) => film.LoadedRetarderPct is not null && film.BlushMarginC >= film.BlushesBelowC;

    private static string Level(double? pct) => RetarderText.Level(pct ?? 0);

    private static string Amount(double? ml) => ml >= WholeFromMl
        ? string.Create(CultureInfo.InvariantCulture, $"{ml:0} mL")
        : string.Create(CultureInfo.InvariantCulture, $"{ml:0.##} mL");
}
