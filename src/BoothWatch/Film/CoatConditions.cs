using BoothWatch.Solvents;

namespace BoothWatch.Film;

/// <summary>Everything that a drying run needs except the humidity of the air.</summary>
public sealed record CoatConditions
{
    /// <summary>What is in the cup.</summary>
    public required Mix Mix { get; init; }

    /// <summary>Wet film thickness as it lands, µm.</summary>
    public required double WetFilmUm { get; init; }

    /// <summary>What the film lies on.</summary>
    public required Substrate Substrate { get; init; }

    /// <summary>Air speed over the piece, m/s.</summary>
    public required double AirSpeedMPerS { get; init; }

    /// <summary>Air temperature, °C; the lacquer lands at this temperature.</summary>
    public required double AirTemperatureC { get; init; }

    /// <summary>Station pressure, Pa.</summary>
    public double PressurePa { get; init; } = PhysicalConstants.StandardPressurePa;

    /// <summary>Temperature of the piece when the coat lands, °C.</summary>
    public required double PieceTemperatureC { get; init; }

    /// <summary>Temperature of the lacquer as it lands, °C; null: the air temperature.</summary>
    public double? LandingTemperatureC { get; init; }
}
