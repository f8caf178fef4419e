using System.Globalization;

namespace BoothWatch.Film;

/// <summary>Ranges within which the drying run is meant to work.</summary>
internal static class CoatConditionsCheck
{
    /// <summary>Throws for the first condition out of range, naming it, its value and its range.</summary>
    /// <exception cref="ArgumentException">A condition is out of range.</exception>
    public static void Throw(CoatConditions conditions, double airVapourPressurePa)
    {
        string? problem = CoatProblem(conditions)
            ?? Outside(conditions.AirTemperatureC, conditions.PieceTemperatureC, conditions.PressurePa)?.Message
            ?? Problem(airVapourPressurePa, 0, 40000, "vapour pressure of the air", "Pa", "1500")
            ?? Problem(conditions.LandingTemperatureC ?? 20, -20, 80, "landing temperature", "°C", "20");
        if (problem is not null)
        {
            throw new ArgumentException(problem);
        }
    }

    /// <summary>What of the measured surroundings is outside the model; null when nothing is.</summary>
    /// <param name="airTemperatureC">Air temperature, °C.</param>
    /// <param name="pieceTemperatureC">Piece temperature, °C.</param>
    /// <param name="pressurePa">Station pressure, Pa.</param>
    /// <param name="reserveC">How far inside the range temperatures must lie, °C: whoever looks at neighbouring temperatures too needs some.</param>
    public static OutsideModelException? Outside(double airTemperatureC, double pieceTemperatureC, double pressurePa, double reserveC = 0) =>
        Outside("air temperature", airTemperatureC, -20 + reserveC, 60 - reserveC, isTemperature: true)
            ?? Outside("piece temperature", pieceTemperatureC, -20 + reserveC, 80 - reserveC, isTemperature: true)
            ?? Outside("pressure", pressurePa, 50000, 120000, isTemperature: false);

    private static OutsideModelException? Outside(string what, double value, double low, double high, bool isTemperature) =>
        value >= low && value <= high ? null : new OutsideModelException(what, value, low, high, isTemperature);

    private static string? CoatProblem(CoatConditions conditions)
    {
        Substrate substrate = conditions.Substrate;
        if (conditions.Mix.Solvents.Count == 0)
        {
            return "the mix holds no solvent; give at least one solvent with its volume fraction";
        }

        return Problem(conditions.WetFilmUm, 1, 2000, "wet film", "µm", "75")
            ?? Problem(conditions.AirSpeedMPerS, 0, 10, "air speed", "m/s", "0.5")
            ?? Problem(substrate.ThicknessM, 1e-4, 1, "substrate thickness", "m", "0.004")
            ?? Problem(substrate.ConductivityWPerMK, 0.01, 500, "substrate conductivity", "W/(m K)", "0.15")
            ?? Problem(substrate.VolumetricHeatCapacityJPerM3K, 1e4, 1e7, "substrate heat capacity", "J/(m³ K)", "770000");
    }

    private static string? Problem(double value, double low, double high, string what, string unit, string example) =>
        value >= low && value <= high
            ? null
            : string.Create(CultureInfo.InvariantCulture, $"{what} is {value} {unit}; give {low} to {high} {unit}, for example {example}");
}
