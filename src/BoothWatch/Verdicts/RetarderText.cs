using System.Globalization;

namespace BoothWatch.Verdicts;

/// <summary>Writes retarder levels and amounts for people.</summary>
public static class RetarderText
{
    /// <summary>A level, for example <c>9 %</c> or <c>2.5 %</c>.</summary>
    public static string Level(double pct) => string.Create(CultureInfo.InvariantCulture, $"{pct:0.#} %");

    /// <summary>An amount as it is measured: whole millilitres from 10 mL, a decimal below, two below 1 mL, so that a little is never "0 mL".</summary>
    public static string Amount(double millilitres) => millilitres switch
    {
        >= 10 => string.Create(CultureInfo.InvariantCulture, $"{millilitres:0} mL"),
        >= 1 => string.Create(CultureInfo.InvariantCulture, $"{millilitres:0.#} mL"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{millilitres:0.##} mL"),
    };

    /// <summary>A level with its amount for the cup, for example <c>9 % retarder (18 mL to the 200 mL cup)</c>.</summary>
    public static string LevelForCup(double pct, FilmFindings film)
    {
        ArgumentNullException.ThrowIfNull(film);
        return $"{Level(pct)} retarder ({Amount(film.RetarderMl(pct))} to the {Amount(film.CupMl)} cup)";
    }
}
