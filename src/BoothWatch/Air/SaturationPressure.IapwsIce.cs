namespace BoothWatch.Air;

public static partial class SaturationPressure
{
    private const double TriplePointPressurePa = 611.657;

    // IAPWS R14-08(2011), table 2.
    private const double IceA1 = -21.2144006;
    private const double IceA2 = 27.3203819;
    private const double IceA3 = -6.10598130;
    private const double IceB1 = 0.00333333333;
    private const double IceB2 = 1.20666667;
    private const double IceB3 = 1.70333333;

    /// <summary>Sublimation pressure of ice Ih after IAPWS, Pa.</summary>
    /// <param name="temperatureK">Temperature, K, 50 to 273.16; not checked.</param>
    /// <remarks>
    /// ln(p/pt) = (1/θ) (a1 θ^b1 + a2 θ^b2 + a3 θ^b3), θ = T/273.16 K, pt = 611.657 Pa.
    /// Source: IAPWS R14-08(2011), equation (6); W. Wagner and others, J. Phys. Chem. Ref. Data 40 (2011) 043103,
    /// doi 10.1063/1.3657937. Worked example: 230 K gives 8.94735 Pa.
    /// </remarks>
    public static double IapwsIce(double temperatureK)
    {
        double theta = temperatureK / TriplePointK;
        double sum = (IceA1 * Math.Pow(theta, IceB1)) + (IceA2 * Math.Pow(theta, IceB2)) + (IceA3 * Math.Pow(theta, IceB3));
        return TriplePointPressurePa * Math.Exp(sum / theta);
    }

    /// <summary>Sublimation pressure of ice Ih after IAPWS, Pa, and its slope.</summary>
    /// <param name="temperatureK">As in <see cref="IapwsIce(double)"/>.</param>
    /// <param name="slopePaPerK">dp/dT = (p/(Tt θ²)) Σ ai (bi - 1) θ^bi, Pa/K.</param>
    public static double IapwsIce(double temperatureK, out double slopePaPerK)
    {
        double theta = temperatureK / TriplePointK;
        double first = IceA1 * Math.Pow(theta, IceB1);
        double second = IceA2 * Math.Pow(theta, IceB2);
        double third = IceA3 * Math.Pow(theta, IceB3);
        double pressurePa = TriplePointPressurePa * Math.Exp((first + second + third) / theta);
        slopePaPerK = pressurePa / (TriplePointK * theta * theta)
            * ((first * (IceB1 - 1)) + (second * (IceB2 - 1)) + (third * (IceB3 - 1)));
        return pressurePa;
    }
}
