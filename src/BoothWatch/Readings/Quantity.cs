namespace BoothWatch.Readings;

/// <summary>What the booth measures. Each quantity has one place and one unit, everywhere in BoothWatch.</summary>
public enum Quantity
{
    /// <summary>Air temperature in the booth, °C.</summary>
    BoothTemperature,

    /// <summary>Relative humidity in the booth, % over water (also below 0 °C, as humidity sensors report it).</summary>
    BoothHumidity,

    /// <summary>Temperature of the intake or outdoor air, °C.</summary>
    IntakeTemperature,

    /// <summary>Relative humidity of the intake or outdoor air, % over water.</summary>
    IntakeHumidity,

    /// <summary>Absolute air pressure at the booth (station pressure, not reduced to sea level), Pa.</summary>
    StationPressure,

    /// <summary>Surface temperature of the piece to be sprayed, °C.</summary>
    PieceTemperature,

    /// <summary>Exhaust proven: 1 while the fan moves air, 0 while it does not.</summary>
    ExhaustProof,

    /// <summary>Pressure drop across the exhaust filter, Pa.</summary>
    FilterPressureDrop,
}
