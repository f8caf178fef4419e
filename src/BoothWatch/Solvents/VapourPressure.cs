namespace BoothWatch.Solvents;

/// <summary>A vapour-pressure correlation of a pure liquid.</summary>
/// <remarks>
/// Two forms, T in K and p in Pa: DIPPR equation 101, ln p = A + B/T + C ln T + D T^E; and Antoine in the natural logarithm,
/// ln p = A - B/(T + C). Outside <see cref="LowestC"/> to <see cref="HighestC"/> the correlation is extrapolated, not clamped:
/// both forms stay smooth, and a wet film is often colder than the range the coefficients were fitted over.
/// </remarks>
public sealed record VapourPressure
{
    private readonly bool _antoine;
    private readonly double _a;
    private readonly double _b;
    private readonly double _c;
    private readonly double _d;
    private readonly double _e;

    private VapourPressure(bool antoine, double a, double b, double c, double d, double e) =>
        (_antoine, _a, _b, _c, _d, _e) = (antoine, a, b, c, d, e);

    /// <summary>Lower end of the fitted range, °C; NaN when the source does not give it.</summary>
    public double LowestC { get; init; } = double.NaN;

    /// <summary>Upper end of the fitted range, °C; NaN when the source does not give it.</summary>
    public double HighestC { get; init; } = double.NaN;

    /// <summary>DIPPR equation 101, p in Pa, T in K.</summary>
    public static VapourPressure Dippr101(double a, double b, double c, double d, double e) => new(false, a, b, c, d, e);

    /// <summary>Antoine equation in the natural logarithm, p in Pa, T in K.</summary>
    public static VapourPressure AntoineLn(double a, double b, double c) => new(true, a, b, c, 0, 0);

    /// <summary>Vapour pressure at a temperature, Pa.</summary>
    public double AtC(double temperatureC)
    {
        double temperatureK = temperatureC + PhysicalConstants.ZeroCelsiusK;
        return Math.Exp(Ln(temperatureK, Math.Log(temperatureK)).LnPa);
    }

    /// <summary>Natural logarithm of the pressure in Pa and its slope with temperature, 1/K.</summary>
    internal (double LnPa, double SlopePerK) Ln(double temperatureK, double lnTemperatureK)
    {
        if (_antoine)
        {
            double shifted = temperatureK + _c;
            double term = _b / shifted;
            return (_a - term, term / shifted);
        }

        double power = _d == 0 ? 0 : _e == 2 ? _d * temperatureK * temperatureK : _d * Math.Pow(temperatureK, _e);
        double bOverT = _b / temperatureK;
        return (
            _a + bOverT + (_c * lnTemperatureK) + power,
            (_c - bOverT + (_e * power)) / temperatureK);
    }
}
