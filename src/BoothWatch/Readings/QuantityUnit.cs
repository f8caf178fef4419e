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
}
