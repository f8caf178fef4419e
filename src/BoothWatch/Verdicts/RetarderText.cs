using System.Globalization;

namespace BoothWatch.Verdicts;

/// <summary>Writes retarder levels and amounts for people.</summary>
public static class RetarderText
{
    /// <summary>A level, for example <c>9 %</c> or <c>2.5 %</c>.</summary>
    public static string Level(double pct) => string.Create(CultureInfo.InvariantCulture, $"{pct:0.#} %");

    /// <summary>An amount as a measuring cup reads it: whole millilitres from 10 mL, half a decimal below.</summary>
    public static string Amount(double millilitres) => millilitres >= 10
        ? string.Create(CultureInfo.InvariantCulture, $"{millilitres:0} mL")
        : string.Create(CultureInfo.InvariantCulture, $"{millilitres:0.#} mL");

    /// <summary>A level with its amount for the cup, for example <c>9 % retarder (18 mL to the 200 mL cup)</c>.</summary>
    public static string LevelForCup(double pct, double cupMl) =>
        $"{Level(pct)} retarder ({Amount(cupMl * pct / 100)} to the {Amount(cupMl)} cup)";
}
