namespace BoothWatch.Service.Advice;

/// <summary>The kinds of number that <c>advise</c> takes. Conversion factors: NIST SP 811 (2008), appendix B.8.</summary>
internal static class Measures
{
    private const double PascalPerInchOfMercury = 3386.389; // conventional mercury
    private const double PascalPerMillimetreOfMercury = 133.3224;
    private const double MicrometrePerMil = 25.4;
    private const double MetrePerSecondPerFootPerMinute = 0.00508;

    // Below this a pressure without a unit is in hPa, above it in Pa: the two ranges are far apart.
    private const double BarePressureLimit = 10_000;

    public static Measure Temperature { get; } = TemperatureFrom(-15, 55, "from -15 to 55 °C (5 to 131 °F); units C (default), F, K");

    public static Measure DewPoint { get; } = TemperatureFrom(-40, 55, "from -40 °C to the air temperature; units C (default), F, K");

    public static Measure TemperatureTolerance { get; } = new(
        "a temperature difference",
        new Dictionary<string, Func<double, double>> { [""] = v => v, ["c"] = v => v, ["k"] = v => v, ["f"] = v => v / 1.8 },
        0, 5, "from 0 to 5 °C; units C (default), F, K");

    public static Measure Margin { get; } = new(
        "a temperature difference",
        new Dictionary<string, Func<double, double>> { [""] = v => v, ["c"] = v => v, ["k"] = v => v, ["f"] = v => v / 1.8 },
        0, 10, "from 0 to 10 °C; units C (default), F, K");

    public static Measure Humidity { get; } = Percent("a relative humidity", 1, 100, "from 1 to 100 %; percent only, with or without the % sign");

    public static Measure HumidityTolerance { get; } = Percent("a humidity difference", 0, 20, "from 0 to 20 %RH, with or without the % sign");

    public static Measure Retarder { get; } = Percent("a retarder level", 0, 30, "from 0 to 30 % of the unretarded mix by volume, with or without the % sign");

    public static Measure Pressure { get; } = new(
        "a station pressure",
        new Dictionary<string, Func<double, double>>
        {
            [""] = v => v < BarePressureLimit ? v * 100 : v,
            ["hpa"] = v => v * 100,
            ["mbar"] = v => v * 100,
            ["kpa"] = v => v * 1000,
            ["pa"] = v => v,
            ["bar"] = v => v * 100_000,
            ["inhg"] = v => v * PascalPerInchOfMercury,
            ["mmhg"] = v => v * PascalPerMillimetreOfMercury,
        },
        50_000, 110_000, "from 500 to 1100 hPa; units hPa (default), Pa (default from 10000 up), kPa, mbar, bar, inHg, mmHg");

    public static Measure Parts { get; } = new(
        "parts by volume",
        new Dictionary<string, Func<double, double>> { [""] = v => v },
        0, 100, "from 0 to 100, without a unit");

    public static Measure WetFilm { get; } = new(
        "a wet film thickness",
        new Dictionary<string, Func<double, double>>
        {
            [""] = v => v,
            ["um"] = v => v,
            ["µm"] = v => v, // micro sign
            ["μm"] = v => v, // Greek mu
            ["mm"] = v => v * 1000,
            ["mil"] = v => v * MicrometrePerMil,
            ["mils"] = v => v * MicrometrePerMil,
        },
        10, 300, "from 10 to 300 µm (0.4 to 11.8 mil); units um (default), mm, mil");

    public static Measure Thickness { get; } = new(
        "a thickness",
        new Dictionary<string, Func<double, double>> { [""] = v => v, ["mm"] = v => v, ["cm"] = v => v * 10, ["in"] = v => v * 25.4 },
        0.5, 300, "from 0.5 to 300 mm (0.02 to 11.8 in); units mm (default), cm, in");

    public static Measure AirSpeed { get; } = new(
        "an air speed",
        new Dictionary<string, Func<double, double>>
        {
            [""] = v => v,
            ["m/s"] = v => v,
            ["fpm"] = v => v * MetrePerSecondPerFootPerMinute,
            ["ft/min"] = v => v * MetrePerSecondPerFootPerMinute,
        },
        0, 5, "from 0 to 5 m/s (0 to 984 fpm); units m/s (default), fpm");

    public static Measure Cup { get; } = new(
        "a cup volume",
        new Dictionary<string, Func<double, double>> { [""] = v => v, ["ml"] = v => v, ["l"] = v => v * 1000 },
        10, 20_000, "from 10 to 20000 mL; units mL (default), L");

    private static Measure TemperatureFrom(double leastC, double mostC, string range) => new(
        "a temperature",
        new Dictionary<string, Func<double, double>>
        {
            [""] = v => v,
            ["c"] = v => v,
            ["f"] = v => (v - 32) / 1.8,
            ["k"] = v => v - 273.15,
        },
        leastC, mostC, range);

    private static Measure Percent(string what, double least, double most, string range) => new(
        what,
        new Dictionary<string, Func<double, double>> { [""] = v => v, ["%"] = v => v, ["%rh"] = v => v },
        least, most, range);
}
