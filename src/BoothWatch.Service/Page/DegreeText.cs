using System.Globalization;
using System.Text.RegularExpressions;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Page;

/// <summary>Writes temperatures on the page and its chart in the unit that the shop reads.</summary>
/// <param name="unit">The unit.</param>
public sealed partial class DegreeText(TemperatureUnit unit)
{
    /// <summary>What stands for a figure that is not known.</summary>
    public const string Unknown = "–";

    private const string NoBreak = "\u00a0";

    /// <summary>The unit, <c>°C</c> or <c>°F</c>.</summary>
    public string Unit => unit.Symbol();

    /// <summary>Converts a temperature in °C.</summary>
    public double Convert(double temperatureC) => unit.FromCelsius(temperatureC);

    /// <summary>Converts a difference of temperatures in °C (K).</summary>
    public double ConvertDifference(double differenceC) => unit.FromCelsiusDifference(differenceC);

    /// <summary>A temperature with its unit, to 0.1 °.</summary>
    public string Temperature(double? temperatureC) =>
        temperatureC is { } c && double.IsFinite(c) ? Number(Convert(c)) + NoBreak + Unit : Unknown;

    /// <summary>A temperature to be reached, rounded up.</summary>
    public string AtLeast(double temperatureC) => Tie(new TemperatureText(unit).AtLeast(temperatureC));

    /// <summary>A signed difference with its unit, to 0.1 °.</summary>
    public string Difference(double? differenceC)
    {
        if (differenceC is not { } c || !double.IsFinite(c))
        {
            return Unknown;
        }

        string number = Number(ConvertDifference(c));
        return (number.StartsWith('−') || number == "0.0" ? number : "+" + number) + NoBreak + Unit;
    }

    /// <summary>An uncertainty with its unit, to 0.1 °, for example <c>± 0.8 °C</c>.</summary>
    public string Uncertainty(double? differenceC) =>
        differenceC is { } c && double.IsFinite(c) ? "±" + NoBreak + Number(ConvertDifference(c)) + NoBreak + Unit : Unknown;

    /// <summary>A percentage without decimals.</summary>
    public static string Percent(double? pct) =>
        pct is { } p && double.IsFinite(p) ? p.ToString("0", CultureInfo.InvariantCulture) + NoBreak + "%" : Unknown;

    /// <summary>Ties numbers to their units, so that no line breaks between them.</summary>
    public static string Tie(string text) => NumberBeforeUnit().Replace(text, NoBreak);

    [GeneratedRegex(@"(?<=\d) (?=(°[CF]|%|mL|s|min|h|Pa|hPa|m/s|g/m²)(\W|$))")]
    private static partial Regex NumberBeforeUnit();

    private static string Number(double value)
    {
        string text = Math.Abs(value).ToString("0.0", CultureInfo.InvariantCulture);
        return value < 0 && text != "0.0" ? "−" + text : text;
    }
}
