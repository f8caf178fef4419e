using System.Globalization;

namespace BoothWatch.Readings;

/// <summary>The unit that each quantity is kept in.</summary>
public static class QuantityUnit
{
    /// <summary>The unit of <paramref name="quantity"/> as it is written behind a number; empty for a yes or no.</summary>
    public static string Of(Quantity quantity) => quantity switch
    {
        Quantity.BoothTemperature or Quantity.IntakeTemperature or Quantity.PieceTemperature => "°C",
        Quantity.BoothHumidity or Quantity.IntakeHumidity => "%",
        Quantity.StationPressure or Quantity.FilterPressureDrop => "Pa",
        Quantity.ExhaustProof => "",
        _ => throw new ArgumentOutOfRangeException(nameof(quantity), quantity, "No unit is defined for this quantity."),
    };

    /// <summary>A value with its unit, to be written into a <see cref="Cause"/>.</summary>
    /// <param name="quantity">What it is of.</param>
    /// <param name="value">The value in the unit of the quantity.</param>
    /// <param name="isBare">True where the unit is not written, because another value with it follows.</param>
    internal static object Write(Quantity quantity, double value, bool isBare = false) => Of(quantity) switch
    {
        "°C" => new Degrees(value, IsBare: isBare),
        { Length: > 0 } unit when !isBare => string.Create(CultureInfo.InvariantCulture, $"{value:0.##} {unit}"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{value:0.##}"),
    };
}
