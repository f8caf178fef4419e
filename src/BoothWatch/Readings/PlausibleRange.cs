namespace BoothWatch.Readings;

/// <summary>What a quantity can be in a shop and on the scale of an ordinary part.</summary>
/// <param name="Lowest">Lowest plausible value, in the unit of the quantity.</param>
/// <param name="Highest">Highest plausible value, in the unit of the quantity.</param>
/// <remarks>
/// The defaults are wide on purpose: they catch a part that lies (a wrong register, a broken wire), not a day that is too
/// hot or too damp to spray, which is for the verdict to say. Common practice, no source, where none is given.
/// </remarks>
public sealed record PlausibleRange(double Lowest, double Highest)
{
    /// <summary>True when <paramref name="value"/> is a number inside the range, ends included.</summary>
    public bool Contains(double value) => value >= Lowest && value <= Highest;

    /// <summary>The default range of a quantity.</summary>
    /// <remarks>
    /// Booth and piece -20 to 60 and -20 to 80 °C. Intake -60 to 60 °C. Humidity -5 to 110 %: parts overshoot their own scale, and
    /// that is saturation, not nonsense. Pressure 60,000 Pa (about 4,100 m) to 110,000 Pa (the highest sea-level pressure
    /// on record is near 108,500 Pa). Exhaust 0 or 1. Filter -100 to 2,000 Pa.
    /// </remarks>
    public static PlausibleRange Of(Quantity quantity) => quantity switch
    {
        Quantity.BoothTemperature => new(-20, 60),
        Quantity.IntakeTemperature => new(-60, 60),
        Quantity.BoothHumidity or Quantity.IntakeHumidity => new(-5, 110),
        Quantity.StationPressure => new(60_000, 110_000),
        Quantity.PieceTemperature => new(-20, 80),
        Quantity.ExhaustProof => new(0, 1),
        Quantity.FilterPressureDrop => new(-100, 2_000),
        _ => throw new ArgumentOutOfRangeException(nameof(quantity), quantity, "No plausible range is defined for this quantity."),
    };
}
