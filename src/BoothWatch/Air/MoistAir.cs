using System.Globalization;

namespace BoothWatch.Air;

/// <summary>The state of moist air: what a hygrometer and a barometer say, and what follows from it.</summary>
/// <remarks>
/// Ideal gases, enhancement factor 1. Enthalpy and wet bulb after the ASHRAE Handbook Fundamentals (2017), chapter 1.
/// Relative humidity, dew point and wet bulb are over water at every temperature, below 0 °C over supercooled water, as
/// humidity sensors report it; only <see cref="FrostPointC"/> is over ice. Every property is calculated when asked for.
/// </remarks>
public sealed partial record MoistAir
{
    /// <summary>Lowest temperature, °C.</summary>
    public const double LowestTemperatureC = -60;

    /// <summary>Highest temperature, °C.</summary>
    public const double HighestTemperatureC = 90;

    /// <summary>Lowest station pressure, Pa.</summary>
    public const double LowestPressurePa = 50_000;

    /// <summary>Highest station pressure, Pa.</summary>
    public const double HighestPressurePa = 120_000;

    // ASHRAE Handbook Fundamentals (2017), chapter 1: ratio of the molar masses of water and dry air, equation (20).
    private const double MolarMassRatio = 0.621945;

    // The same, equation (1): gas constant of dry air, J/(kg K).
    private const double DryAirGasConstant = 287.042;

    private static readonly double FrostLimitPa =
        SaturationPressure.OverIce(SaturationPressure.TriplePointK - SaturationPressure.ZeroCelsiusK);

    private MoistAir(double temperatureC, double relativeHumidityPct, double vapourPressurePa, double pressurePa)
    {
        TemperatureC = temperatureC;
        RelativeHumidityPct = relativeHumidityPct;
        VapourPressurePa = vapourPressurePa;
        PressurePa = pressurePa;
    }

    /// <summary>Dry-bulb temperature, °C.</summary>
    public double TemperatureC { get; }

    /// <summary>Relative humidity over water, %.</summary>
    public double RelativeHumidityPct { get; }

    /// <summary>Station pressure, Pa.</summary>
    public double PressurePa { get; }

    /// <summary>Partial pressure of water vapour, Pa: e = (RH/100) psat(t).</summary>
    public double VapourPressurePa { get; }

    /// <summary>Dew point over water, °C; -100 °C for air drier than that, down to none at all.</summary>
    public double DewPointC => DewPoint.OverWater(VapourPressurePa);

    /// <summary>Frost point over ice, °C; null where the air is too moist for frost (vapour pressure above 611.657 Pa).</summary>
    public double? FrostPointC => VapourPressurePa > FrostLimitPa ? null : DewPoint.OverIce(VapourPressurePa);

    /// <summary>Humidity ratio, kg of water vapour a kg of dry air: W = 0.621945 e/(p - e).</summary>
    public double HumidityRatio => RatioOf(VapourPressurePa, PressurePa);

    /// <summary>Density of the moist air, kg/m³: ρ = (p - 0.378055 e)/(287.042 T), within 0.1 % of CIPM-2007 in ordinary rooms.</summary>
    public double DensityKgPerM3 =>
        (PressurePa - ((1 - MolarMassRatio) * VapourPressurePa)) / (DryAirGasConstant * (TemperatureC + SaturationPressure.ZeroCelsiusK));

    /// <summary>Water vapour in a volume of air (absolute humidity), kg/m³.</summary>
    public double VapourDensityKgPerM3 =>
        VapourPressurePa * MolarMassRatio / (DryAirGasConstant * (TemperatureC + SaturationPressure.ZeroCelsiusK));

    /// <summary>Enthalpy, J a kg of dry air, zero for dry air at 0 °C and liquid water at 0 °C.</summary>
    public double EnthalpyJPerKgDryAir => EnthalpyOf(TemperatureC, HumidityRatio);

    /// <summary>Air of a temperature and a relative humidity over water.</summary>
    /// <param name="temperatureC">Dry-bulb temperature, °C, -60 to 90.</param>
    /// <param name="relativeHumidityPct">Relative humidity over water, %, 0 to 100.</param>
    /// <param name="pressurePa">Station pressure, Pa, 50,000 to 120,000; above the vapour pressure.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is not a number or out of its range.</exception>
    public static MoistAir FromRelativeHumidity(double temperatureC, double relativeHumidityPct, double pressurePa)
    {
        CheckState(temperatureC, pressurePa);
        Require.InRange(relativeHumidityPct, 0, 100, "%");
        double vapourPressurePa = relativeHumidityPct / 100 * SaturationPressure.OverWater(temperatureC);
        if (vapourPressurePa >= pressurePa)
        {
            throw new ArgumentOutOfRangeException(
                nameof(pressurePa),
                pressurePa,
                string.Create(CultureInfo.InvariantCulture, $"pressurePa is {pressurePa} Pa; it must exceed the vapour pressure, {vapourPressurePa:F0} Pa."));
        }

        return new MoistAir(temperatureC, relativeHumidityPct, vapourPressurePa, pressurePa);
    }

    /// <summary>Air of a temperature and a dew point over water.</summary>
    /// <param name="temperatureC">Dry-bulb temperature, °C, -60 to 90.</param>
    /// <param name="dewPointC">Dew point, °C, -100 to the temperature; -100 stands for dry air too.</param>
    /// <param name="pressurePa">Station pressure, Pa, 50,000 to 120,000.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is not a number or out of its range.</exception>
    public static MoistAir FromDewPoint(double temperatureC, double dewPointC, double pressurePa)
    {
        CheckState(temperatureC, pressurePa);
        return FromRelativeHumidity(temperatureC, RelativeHumidity.FromDewPoint(temperatureC, dewPointC), pressurePa);
    }

    /// <summary>Air of a temperature and a humidity ratio.</summary>
    /// <param name="temperatureC">Dry-bulb temperature, °C, -60 to 90.</param>
    /// <param name="humidityRatio">Humidity ratio, kg/kg, 0 to saturation.</param>
    /// <param name="pressurePa">Station pressure, Pa, 50,000 to 120,000.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is not a number or out of its range.</exception>
    public static MoistAir FromHumidityRatio(double temperatureC, double humidityRatio, double pressurePa)
    {
        CheckState(temperatureC, pressurePa);
        double saturationPa = SaturationPressure.OverWater(temperatureC);
        double highest = saturationPa < pressurePa ? RatioOf(saturationPa, pressurePa) : double.MaxValue;
        Require.InRange(humidityRatio, 0, highest, "kg/kg");
        double vapourPressurePa = pressurePa * humidityRatio / (MolarMassRatio + humidityRatio);
        return FromRelativeHumidity(temperatureC, Math.Min(100, 100 * vapourPressurePa / saturationPa), pressurePa);
    }

    /// <summary>The state for people, for example <c>24.0 °C, 60.0 % RH, 101325 Pa</c>.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{TemperatureC:F1} °C, {RelativeHumidityPct:F1} % RH, {PressurePa:F0} Pa");

    private static void CheckState(double temperatureC, double pressurePa)
    {
        Require.InRange(temperatureC, LowestTemperatureC, HighestTemperatureC, "°C");
        Require.InRange(pressurePa, LowestPressurePa, HighestPressurePa, "Pa");
    }

    private static double RatioOf(double vapourPressurePa, double pressurePa) =>
        MolarMassRatio * vapourPressurePa / (pressurePa - vapourPressurePa);

    // ASHRAE Handbook Fundamentals (2017), chapter 1, equation (30): h = 1.006 t + W (2501 + 1.86 t), kJ/kg.
    private static double EnthalpyOf(double temperatureC, double humidityRatio) =>
        (1006 * temperatureC) + (humidityRatio * (2_501_000 + (1860 * temperatureC)));

    // The same, from equation (33): enthalpy of liquid water 4.186 t, kJ/kg.
    private static double LiquidEnthalpyOf(double temperatureC) => 4186 * temperatureC;
}
