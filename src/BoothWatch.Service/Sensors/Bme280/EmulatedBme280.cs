using System.Buffers.Binary;
using BoothWatch.Service.Sensors.Emulation;

namespace BoothWatch.Service.Sensors.Bme280;

/// <summary>
/// A BME280 at the level of its registers: calibration block, skipped results after a reset, forced conversions that take
/// their time. Its counts are those from which the compensation formulas give back the true values.
/// </summary>
/// <param name="air">The true air at the sensor, asked at each conversion.</param>
/// <param name="time">Clock of the conversion times.</param>
/// <param name="seed">Seed of the noise.</param>
/// <remarks>Source: Bosch, BME280 data sheet BST-BME280-DS002, sections 3.3, 5.3, 5.4 and 9.1.</remarks>
public sealed class EmulatedBme280(Func<AirSignal> air, TimeProvider time, int seed) : EmulatedChip(seed)
{
    /// <summary>The coefficients of this chip: invented, of the size that real ones have.</summary>
    public static readonly Bme280Calibration Calibration = new()
    {
        T = (27_900, 26_600, 50),
        P1 = 36_900,
        P = (-10_600, 3_024, 7_200, -60, -7, 9_900, -10_230, 4_285),
        H = (75, 360, 0, 320, 50, 30),
    };

    // Noise with single oversampling and no filter: 0.005 °C, 3.3 Pa, 0.07 %RH. Source: data sheet, section 3.6, tables 3 and 8 (from memory).
    private const double TemperatureNoiseC = 0.005;
    private const double PressureNoisePa = 3.3;
    private const double HumidityNoisePct = 0.07;

    private readonly byte[] _registers = Blank();
    private int _pointer;
    private byte _humiditySampling;
    private bool _converting;
    private bool _converted;
    private long _since;
    private TimeSpan _duration;

    /// <inheritdoc/>
    protected override void OnWrite(ReadOnlySpan<byte> bytes)
    {
        Finish();
        if (bytes.Length == 1)
        {
            _pointer = bytes[0];
            return;
        }

        for (int i = 0; i + 1 < bytes.Length; i += 2)
        {
            Set(bytes[i], bytes[i + 1]);
        }
    }

    /// <inheritdoc/>
    protected override void OnRead(Span<byte> bytes)
    {
        Finish();
        for (int i = 0; i < bytes.Length; i++)
        {
            bytes[i] = _registers[(_pointer + i) & 0xFF];
        }
    }

    private static byte[] Blank()
    {
        byte[] registers = new byte[256];
        registers[Bme280Registers.ChipId] = Bme280Registers.ChipIdValue;
        Span<byte> pairs = registers.AsSpan(Bme280Registers.CalibrationT1);
        short[] signed =
        [
            Calibration.T.T2, Calibration.T.T3, (short)Calibration.P1, Calibration.P.P2, Calibration.P.P3, Calibration.P.P4,
            Calibration.P.P5, Calibration.P.P6, Calibration.P.P7, Calibration.P.P8, Calibration.P.P9,
        ];
        BinaryPrimitives.WriteUInt16LittleEndian(pairs, Calibration.T.T1);
        for (int i = 0; i < signed.Length; i++)
        {
            BinaryPrimitives.WriteInt16LittleEndian(pairs[(2 * (i + 1))..], signed[i]);
        }

        registers[Bme280Registers.CalibrationH1] = Calibration.H.H1;
        Span<byte> humidity = registers.AsSpan(Bme280Registers.CalibrationH2, 7);
        BinaryPrimitives.WriteInt16LittleEndian(humidity, Calibration.H.H2);
        humidity[2] = Calibration.H.H3;
        humidity[3] = (byte)(Calibration.H.H4 >> 4);
        humidity[4] = (byte)((Calibration.H.H4 & 0x0F) | ((Calibration.H.H5 & 0x0F) << 4));
        humidity[5] = (byte)(Calibration.H.H5 >> 4);
        humidity[6] = (byte)Calibration.H.H6;
        Put20(registers, Bme280Registers.Pressure, Bme280Registers.Skipped20);
        Put20(registers, Bme280Registers.Temperature, Bme280Registers.Skipped20);
        BinaryPrimitives.WriteUInt16BigEndian(registers.AsSpan(Bme280Registers.Humidity), Bme280Registers.Skipped16);
        return registers;
    }

    private static void Put20(byte[] registers, int register, int count)
    {
        registers[register] = (byte)(count >> 12);
        registers[register + 1] = (byte)(count >> 4);
        registers[register + 2] = (byte)(count << 4);
    }

    private void Set(byte register, byte value)
    {
        switch (register)
        {
            case Bme280Registers.Reset when value == Bme280Registers.ResetValue:
                Blank().CopyTo(_registers, 0);
                _humiditySampling = 0;
                _converting = false;
                _converted = false;
                break;
            case Bme280Registers.ControlHumidity or Bme280Registers.Configuration:
                _registers[register] = value;
                break;
            case Bme280Registers.ControlMeasurement:
                _registers[register] = value;
                _humiditySampling = (byte)(_registers[Bme280Registers.ControlHumidity] & 0b111);
                if ((value & 0b11) is not 0)
                {
                    Start(value);
                }

                break;
            default:
                break;
        }
    }

    private void Start(byte control)
    {
        static int Times(int code) => code == 0 ? 0 : 1 << (Math.Min(code, 5) - 1);
        int temperature = Times(control >> 5);
        int pressure = Times((control >> 2) & 0b111);
        int humidity = Times(_humiditySampling);
        _duration = TimeSpan.FromMilliseconds(1 + (2 * temperature) + Extra(pressure) + Extra(humidity));
        _since = time.GetTimestamp();
        _converting = true;
        _registers[Bme280Registers.Status] |= 0b1000;

        static double Extra(int times) => times == 0 ? 0 : (2 * times) + 0.5;
    }

    private void Finish()
    {
        if (!_converting || time.GetElapsedTime(_since) < _duration)
        {
            return;
        }

        byte control = _registers[Bme280Registers.ControlMeasurement];
        bool normal = (control & 0b11) == 0b11;
        _converting = normal;
        _since = time.GetTimestamp();
        if (!normal)
        {
            _registers[Bme280Registers.ControlMeasurement] = (byte)(control & 0b1111_1100);
            _registers[Bme280Registers.Status] &= 0b1111_0111;
        }

        if (Converts() || !_converted)
        {
            Convert(control);
            _converted = true;
        }
    }

    private void Convert(byte control)
    {
        AirSignal now = air();
        int temperature = Calibration.TemperatureCount(now.TemperatureC + Noise(TemperatureNoiseC));
        double fine = Calibration.Fine(temperature);
        int pressure = Calibration.PressureCount(now.PressurePa + Noise(PressureNoisePa), fine);
        int humidity = Fault() == BusFault.Saturated
            ? Bme280Calibration.HighestCount16 - 1
            : Calibration.HumidityCount(now.RelativeHumidityPct + Noise(HumidityNoisePct) + (DriftOfScale * 100), fine);
        Put20(_registers, Bme280Registers.Temperature, (control >> 5) == 0 ? Bme280Registers.Skipped20 : temperature);
        Put20(_registers, Bme280Registers.Pressure, ((control >> 2) & 0b111) == 0 ? Bme280Registers.Skipped20 : pressure);
        BinaryPrimitives.WriteUInt16BigEndian(
            _registers.AsSpan(Bme280Registers.Humidity),
            (ushort)(_humiditySampling == 0 ? Bme280Registers.Skipped16 : humidity));
    }
}
