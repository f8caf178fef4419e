using System.Globalization;
using System.Text.RegularExpressions;

namespace BoothWatch.Service.Advice;

/// <summary>A kind of measured number that people type, with the units it may carry.</summary>
/// <param name="What">The kind, for people, for example <c>a temperature</c>.</param>
/// <param name="Units">Units by suffix; a number without one is in the unit with the empty suffix.</param>
/// <param name="Least">Least value allowed, in the unit kept inside.</param>
/// <param name="Most">Greatest value allowed, in the unit kept inside.</param>
/// <param name="Range">The range and the units, for people.</param>
internal sealed partial record Measure(
    string What,
    IReadOnlyDictionary<string, Func<double, double>> Units,
    double Least,
    double Most,
    string Range)
{
    /// <summary>Reads a number with or without a unit; <paramref name="problem"/> says what is wrong, without the range.</summary>
    public bool TryRead(string text, out double value, out string? problem)
    {
        value = double.NaN;
        if (text.Contains(',', StringComparison.Ordinal))
        {
            problem = "a decimal point is a point, not a comma";
            return false;
        }

        Match match = NumberAndUnit().Match(text.Trim().Replace('−', '-'));
        if (!match.Success)
        {
            problem = "it is not a number";
            return false;
        }

        string unit = match.Groups["unit"].Value.Replace("°", "", StringComparison.Ordinal).ToLowerInvariant();
        if (!Units.TryGetValue(unit, out Func<double, double>? toInside))
        {
            problem = $"'{match.Groups["unit"].Value}' is not a unit of it";
            return false;
        }

        value = toInside(double.Parse(match.Groups["number"].Value, CultureInfo.InvariantCulture));
        if (!(value >= Least && value <= Most))
        {
            problem = "out of range";
            return false;
        }

        problem = null;
        return true;
    }

    [GeneratedRegex(@"^(?<number>[+-]?(\d+(\.\d*)?|\.\d+)([eE][+-]?\d+)?)\s*(?<unit>\S*)$", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant)]
    private static partial Regex NumberAndUnit();
}
