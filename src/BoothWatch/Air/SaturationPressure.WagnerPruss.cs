namespace BoothWatch.Air;

public static partial class SaturationPressure
{
    private const double CriticalTemperatureK = 647.096;
    private const double CriticalPressurePa = 22.064e6;

    // IAPWS SR1-86(1992), equation (1); the same as equation (2.5) of Wagner and Pruss (2002).
    private const double WagnerA1 = -7.85951783;
    private const double WagnerA2 = 1.84408259;
    private const double WagnerA3 = -11.7866497;
    private const double WagnerA4 = 22.6807411;
    private const double WagnerA5 = -15.9618719;
    private const double WagnerA6 = 1.80122502;

    /// <summary>Saturation pressure over liquid water after Wagner and Pruss, Pa.</summary>
    /// <param name="temperatureK">Temperature, K, 273.16 to 647.096. Not checked: below, the extrapolation runs 0.009 K
    /// off Murphy and Koop at -20 °C and 0.18 K at -50 °C; above the critical point it is NaN.</param>
    /// <remarks>
    /// ln(p/pc) = (Tc/T) (a1 τ + a2 τ^1.5 + a3 τ^3 + a4 τ^3.5 + a5 τ^4 + a6 τ^7.5), τ = 1 - T/Tc.
    /// Source: W. Wagner and A. Pruss, J. Phys. Chem. Ref. Data 22 (1993) 783-787, doi 10.1063/1.555926, which is
    /// IAPWS SR1-86(1992); consistent with IAPWS-95. Worked example: 273.16 K gives 611.657 Pa.
    /// </remarks>
    public static double WagnerPruss(double temperatureK)
    {
        double tau = 1 - (temperatureK / CriticalTemperatureK);
        double root = Math.Sqrt(tau);
        double cube = tau * tau * tau;
        double sum = tau * (WagnerA1 + (WagnerA2 * root))
            + (cube * (WagnerA3 + (WagnerA4 * root) + (tau * (WagnerA5 + (WagnerA6 * cube * root)))));
        return CriticalPressurePa * Math.Exp(CriticalTemperatureK / temperatureK * sum);
    }

    /// <summary>Saturation pressure over liquid water after Wagner and Pruss, Pa, and its slope.</summary>
    /// <param name="temperatureK">As in <see cref="WagnerPruss(double)"/>.</param>
    /// <param name="slopePaPerK">dp/dT = -(p/T) (ln(p/pc) + a1 + 1.5 a2 τ^0.5 + 3 a3 τ² + 3.5 a4 τ^2.5 + 4 a5 τ³ + 7.5 a6 τ^6.5), Pa/K.</param>
    public static double WagnerPruss(double temperatureK, out double slopePaPerK)
    {
        double tau = 1 - (temperatureK / CriticalTemperatureK);
        double root = Math.Sqrt(tau);
        double square = tau * tau;
        double cube = square * tau;
        double sum = tau * (WagnerA1 + (WagnerA2 * root))
            + (cube * (WagnerA3 + (WagnerA4 * root) + (tau * (WagnerA5 + (WagnerA6 * cube * root)))));
        double logarithm = CriticalTemperatureK / temperatureK * sum;
        double pressurePa = CriticalPressurePa * Math.Exp(logarithm);
        double derivative = WagnerA1 + (1.5 * WagnerA2 * root)
            + (square * ((3 * WagnerA3) + (3.5 * WagnerA4 * root)))
            + (cube * ((4 * WagnerA5) + (7.5 * WagnerA6 * cube * root)));
        slopePaPerK = -pressurePa / temperatureK * (logarithm + derivative);
        return pressurePa;
    }
}
