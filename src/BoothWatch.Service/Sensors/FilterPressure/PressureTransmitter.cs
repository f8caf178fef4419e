using System.Globalization;

namespace BoothWatch.Service.Sensors.FilterPressure;

/// <summary>A differential pressure transmitter with a voltage output that starts above zero, so that a broken wire shows.</summary>
/// <param name="ZeroV">Output at no pressure difference, V.</param>
/// <param name="FullScaleV">Output at full scale, V.</param>
/// <param name="FullScalePa">Pressure difference at full scale, Pa.</param>
public sealed record PressureTransmitter(double ZeroV, double FullScaleV, double FullScalePa)
{
    /// <summary>How far beyond either end of its range, as a share of it, the output is still believed.</summary>
    private const double Overrange = 0.05;

    /// <summary>The pressure difference, Pa, that a voltage means.</summary>
    /// <exception cref="InvalidDataException">The voltage is outside the range of the transmitter; the message says what that means.</exception>
    public double PressurePa(double volts)
    {
        double share = (volts - ZeroV) / (FullScaleV - ZeroV);
        return share switch
        {
            < -Overrange => throw new InvalidDataException(string.Create(
                CultureInfo.InvariantCulture,
                $"the transmitter gives {volts:0.00} V, below its zero of {ZeroV:0.00} V: no supply or a broken wire")),
            > 1 + Overrange => throw new InvalidDataException(string.Create(
                CultureInfo.InvariantCulture,
                $"the transmitter gives {volts:0.00} V, above its full scale of {FullScaleV:0.00} V: over its range or a short circuit")),
            _ => share * FullScalePa,
        };
    }

    /// <summary>The voltage at a pressure difference.</summary>
    public double Volts(double pressurePa) => ZeroV + (pressurePa / FullScalePa * (FullScaleV - ZeroV));
}
