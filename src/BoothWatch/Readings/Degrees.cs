using System.Globalization;

namespace BoothWatch.Readings;

/// <summary>A temperature within words, kept as a number until it is known in which unit it is read.</summary>
/// <param name="Celsius">The temperature, °C.</param>
/// <param name="IsDifference">True for a difference of temperatures, which has no offset.</param>
/// <param name="IsBare">True where the unit is not written, because another temperature with it follows.</param>
public readonly record struct Degrees(double Celsius, bool IsDifference = false, bool IsBare = false)
{
    /// <summary>The temperature in °C, for example <c>21.4 °C</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Celsius:0.##}{(IsBare ? "" : " °C")}");
}
