namespace BoothWatch.Service.Sensors.Bme280;

/// <summary>The calibration coefficients of one BME280, and the compensation that they belong to.</summary>
/// <remarks>
/// Source: Bosch, BME280 data sheet BST-BME280-DS002, section 8.1 (double precision). Worked example: BMP280 data sheet
/// BST-BMP280-DS001, section 3.12 (temperature and pressure are the same).
/// </remarks>
public sealed record Bme280Calibration
{
    /// <summary>Highest count of a 20-bit result.</summary>
    public const int HighestCount20 = (1 << 20) - 1;

    /// <summary>Highest count of the 16-bit humidity.</summary>
    public const int HighestCount16 = (1 << 16) - 1;

    private const double FinePerC = 5120;

    /// <summary>Temperature coefficients 1 to 3.</summary>
    public required (ushort T1, short T2, short T3) T { get; init; }

    /// <summary>First pressure coefficient.</summary>
    public required ushort P1 { get; init; }

    /// <summary>Pressure coefficients 2 to 9.</summary>
    public required (short P2, short P3, short P4, short P5, short P6, short P7, short P8, short P9) P { get; init; }

    /// <summary>Humidity coefficients 1 to 6; 4 and 5 are 12 bits wide.</summary>
    public required (byte H1, short H2, byte H3, short H4, short H5, sbyte H6) H { get; init; }

    /// <summary>Fine temperature (1/5120 °C) of a temperature count.</summary>
    public double Fine(int count)
    {
        double scaled = (count / 16384.0) - (T.T1 / 1024.0);
        return (scaled * T.T2) + (scaled * scaled / 64 * T.T3);
    }

    /// <summary>Temperature, °C, of a fine temperature.</summary>
    public static double TemperatureC(double fine) => fine / FinePerC;

    /// <summary>Pressure, Pa, of a pressure count.</summary>
    public double PressurePa(int count, double fine)
    {
        double x = (fine / 2) - 64000;
        double offset = (((x * x * P.P6 / 32768) + (x * P.P5 * 2)) / 4) + (P.P4 * 65536.0);
        double slope = (1 + (((P.P3 * x * x / 524288) + (P.P2 * x)) / 524288 / 32768)) * P1;
        double pressure = (1048576 - count - (offset / 4096)) * 6250 / slope;
        return pressure + (((P.P9 * pressure * pressure / 2147483648) + (pressure * P.P8 / 32768) + P.P7) / 16);
    }

    /// <summary>Relative humidity, %, of a humidity count; not limited to 0 to 100.</summary>
    public double RelativeHumidityPct(int count, double fine)
    {
        double x = fine - 76800;
        double raw = (count - ((H.H4 * 64.0) + (H.H5 / 16384.0 * x)))
            * (H.H2 / 65536.0 * (1 + (H.H6 / 67108864.0 * x * (1 + (H.H3 / 67108864.0 * x)))));
        return raw * (1 - (H.H1 * raw / 524288));
    }

    /// <summary>The temperature count of a temperature.</summary>
    public int TemperatureCount(double temperatureC) =>
        Invert(count => TemperatureC(Fine(count)), temperatureC, HighestCount20);

    /// <summary>The pressure count of a pressure.</summary>
    public int PressureCount(double pressurePa, double fine) =>
        Invert(count => -PressurePa(count, fine), -pressurePa, HighestCount20);

    /// <summary>The humidity count of a relative humidity.</summary>
    public int HumidityCount(double relativeHumidityPct, double fine) =>
        Invert(count => RelativeHumidityPct(count, fine), relativeHumidityPct, HighestCount16);

    /// <summary>The count from 0 to <paramref name="highest"/> whose value, rising with the count, comes nearest.</summary>
    private static int Invert(Func<int, double> value, double wanted, int highest)
    {
        int low = 0;
        int high = highest;
        while (high - low > 1)
        {
            int middle = (low + high) / 2;
            if (value(middle) < wanted)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return wanted - value(low) <= value(high) - wanted ? low : high;
    }
}
