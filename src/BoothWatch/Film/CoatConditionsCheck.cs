using System.Globalization;

namespace BoothWatch.Film;

/// <summary>Ranges within which the drying run is meant to work.</summary>
internal static class CoatConditionsCheck
{
    /// <summary>Throws for the first condition out of range, naming it, its value and its range.</summary>
    public static void Throw(CoatConditions conditions, double airVapourPressurePa)
    {
        Within(conditions.WetFilmUm, 1, 2000, "wet film", "µm", "75");
        Within(conditions.AirSpeedMPerS, 0, 10, "air speed", "m/s", "0.5");
        Within(conditions.AirTemperatureC, -20, 60, "air temperature", "°C", "21");
        Within(conditions.PieceTemperatureC, -20, 80, "piece temperature", "°C", "20");
        Within(conditions.LandingTemperatureC ?? 20, -20, 80, "landing temperature", "°C", "20");
        Within(conditions.PressurePa, 50000, 120000, "pressure", "Pa", "101325");
        Within(airVapourPressurePa, 0, 40000, "vapour pressure of the air", "Pa", "1500");
        Within(conditions.Substrate.ThicknessM, 1e-4, 1, "substrate thickness", "m", "0.004");
        Within(conditions.Substrate.ConductivityWPerMK, 0.01, 500, "substrate conductivity", "W/(m K)", "0.15");
        Within(conditions.Substrate.VolumetricHeatCapacityJPerM3K, 1e4, 1e7, "substrate heat capacity", "J/(m³ K)", "770000");
        if (conditions.Mix.Solvents.Count == 0)
        {
            throw new ArgumentException("the mix holds no solvent; give at least one solvent with its volume fraction");
        }
    }

    private static void Within(double value, double low, double high, string what, string unit, string example)
    {
        if (!(value >= low && value <= high))
        {
            throw new ArgumentException(string.Create(
                CultureInfo.InvariantCulture, $"{what} is {value} {unit}; give {low} to {high} {unit}, for example {example}"));
        }
    }
}
