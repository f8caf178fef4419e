using System.Globalization;
using System.Runtime.CompilerServices;

namespace BoothWatch.Air;

/// <summary>Argument checks that name the argument, the value and the range.</summary>
internal static class Require
{
    internal static void InRange(
        double value,
        double lowest,
        double highest,
        string unit,
        [CallerArgumentExpression(nameof(value))] string name = "")
    {
        if (!(value >= lowest && value <= highest))
        {
            throw new ArgumentOutOfRangeException(
                name,
                value,
                string.Create(CultureInfo.InvariantCulture, $"{name} is {value} {unit}; the range is {lowest} to {highest} {unit}."));
        }
    }
}
