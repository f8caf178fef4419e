using BoothWatch.Air;

namespace BoothWatch.Checks;

/// <summary>What a sensor read over a salt, against what the air there was.</summary>
/// <remarks>
/// <para>Standard uncertainty of the difference (GUM, JCGM 100:2008, 4.3.7 and 5.1.2), each half-width a rectangle, so divided by √3: what
/// the source of the fixed point states; the gradient between salt and sensor, times RH (dp_sat/dt)/p_sat; the change over the time that was
/// averaged, in which stand noise, resolution and what has not settled; and the standard uncertainty of the measured temperature times the slope
/// of the fixed point. The expanded uncertainty is twice the root of the sum of squares.</para>
/// <para>Decision with guard band on both sides (JCGM 106:2012, 8.3.2 and 8.3.3): within when |difference| + U is at most the
/// tolerance, outside when |difference| - U is above it, else it cannot be told. The tolerance of the part is the limit and no part of U.</para>
/// <para>Worked example: sodium chloride at 25 °C, 78.0 % read, gradient 0.2 °C, change 0.1 %, temperature 0.23 °C (k = 1), tolerance
/// 3.6 %: reference 75.3 %, difference +2.7 %, U 1.05 %; 1.65 to 3.75 % encloses the tolerance, so it cannot be told.</para>
/// </remarks>
/// <param name="Salt">Id of the salt, see <see cref="SaltPoint"/>.</param>
/// <param name="TemperatureC">Temperature in the jar as the sensor read it, °C.</param>
/// <param name="ReferencePct">Humidity over the salt at that temperature, %.</param>
/// <param name="ReadPct">What the sensor read, %.</param>
/// <param name="ExpandedUncertaintyPct">Expanded uncertainty (k = 2) of the difference, % of relative humidity.</param>
/// <param name="TolerancePct">What the part may be off, ± % of relative humidity.</param>
public sealed record CheckResult(
    string Salt, double TemperatureC, double ReferencePct, double ReadPct, double ExpandedUncertaintyPct, double TolerancePct)
{
    private const double CoverageFactor = 2;

    /// <summary>Read less reference, % of relative humidity: positive where the sensor reads too damp.</summary>
    public double DeviationPct => ReadPct - ReferencePct;

    /// <summary>The decision.</summary>
    public CheckOutcome Outcome =>
        Math.Abs(DeviationPct) + ExpandedUncertaintyPct <= TolerancePct ? CheckOutcome.Within
        : Math.Abs(DeviationPct) - ExpandedUncertaintyPct > TolerancePct ? CheckOutcome.Outside
        : CheckOutcome.CannotTell;

    /// <summary>Works out a result.</summary>
    /// <param name="salt">The salt in the jar.</param>
    /// <param name="jar">What was read there, settled.</param>
    /// <param name="humidityUncertaintyPct">Standard uncertainty (k = 1) of the part's humidity: a rectangle, so its tolerance is √3 times this.</param>
    /// <param name="temperatureUncertaintyC">Standard uncertainty (k = 1) of the part's temperature, °C.</param>
    /// <param name="gradientC">How much salt and sensor may differ in temperature, ± °C.</param>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is outside that of the fixed point.</exception>
    /// <exception cref="InvalidOperationException">The readings are not settled.</exception>
    public static CheckResult Of(SaltPoint salt, SettlingState jar, double humidityUncertaintyPct, double temperatureUncertaintyC, double gradientC)
    {
        ArgumentNullException.ThrowIfNull(salt);
        ArgumentNullException.ThrowIfNull(jar);
        if (jar is not { IsSettled: true, HumidityPct: { } readPct, TemperatureC: { } temperatureC })
        {
            throw new InvalidOperationException($"The readings are not settled: {jar.NotYet}.");
        }

        double referencePct = salt.HumidityPct(temperatureC);
        double saturationPa = SaturationPressure.OverWater(temperatureC, out double slopePaPerC);
        double[] halfWidthsPct = [salt.UncertaintyPct(temperatureC), referencePct * slopePaPerC / saturationPa * gradientC, jar.HumidityChangePct];
        double fromTemperaturePct = salt.SlopePctPerC(temperatureC) * temperatureUncertaintyC;
        double standardPct = Math.Sqrt((halfWidthsPct.Sum(width => width * width) / 3) + (fromTemperaturePct * fromTemperaturePct));
        return new CheckResult(
            salt.Id, temperatureC, referencePct, readPct, CoverageFactor * standardPct, Math.Sqrt(3) * humidityUncertaintyPct);
    }
}
