using BoothWatch.Service.Sensors.MqttAir;

namespace BoothWatch.Service.Sensors;

/// <summary>One sensor: which part it is and where it is wired. Settings that a part does not use are ignored.</summary>
public sealed class SensorOptions
{
    /// <summary>Kind of part: sht4x, sht3x, bme280, mlx90614, typed, contact, ads1115-pressure, mqtt, or none when not fitted.</summary>
    public string Part { get; set; } = SensorsOptions.None;

    /// <summary>Where its signals come from: emulated or real. Default emulated.</summary>
    public string Source { get; set; } = "emulated";

    /// <summary>Parts on I²C: number of the bus, n of <c>/dev/i2c-n</c>. Default 1; 0 to 255.</summary>
    public int Bus { get; set; } = 1;

    /// <summary>Parts on I²C: 7-bit address in hexadecimal, for example <c>0x44</c>. Default: the usual one of the part.</summary>
    public string? Address { get; set; }

    /// <summary>bme280: whether it provides the station pressure. Default true; only one sensor may.</summary>
    public bool StationPressure { get; set; } = true;

    /// <summary>contact: GPIO number of the pin. Default 23; 0 to 53.</summary>
    public int Pin { get; set; } = 23;

    /// <summary>contact: true when the pin is high while the exhaust is proven. Default false: the contact pulls the pin to ground.</summary>
    public bool ActiveHigh { get; set; }

    /// <summary>contact: pull resistor of the pin: up, down, or none (an external one). Default: the one that reads an open contact as not proven.</summary>
    public string? Pull { get; set; }

    /// <summary>typed: how long a typed value holds, s. Default 1800; 60 to 86400.</summary>
    public double HoldS { get; set; } = 1800;

    /// <summary>ads1115-pressure: analog input, AIN0 to AIN3. Default 0; 0 to 3.</summary>
    public int Channel { get; set; }

    /// <summary>ads1115-pressure: pressure difference at the end of the transmitter's range, Pa. Default 250; 10 to 10000.</summary>
    public double FullScalePa { get; set; } = 250;

    /// <summary>ads1115-pressure: what the transmitter gives at no pressure difference, V. Default 0.5; 0 to 5.</summary>
    public double ZeroV { get; set; } = 0.5;

    /// <summary>ads1115-pressure: what the transmitter gives at full scale, V. Default 4.5; above zeroV, at most 10.</summary>
    public double FullScaleV { get; set; } = 4.5;

    /// <summary>ads1115-pressure: share of the transmitter's voltage that reaches the input (resistor divider). Default 1; 0.1 to 1.</summary>
    public double DividerRatio { get; set; } = 1;

    /// <summary>mqtt: the topics and what to read from their messages.</summary>
    public MqttAirOptions Mqtt { get; set; } = new();
}
