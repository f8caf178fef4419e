namespace BoothWatch.Service.Sensors.Bme280;

/// <summary>Register addresses of the BME280. Source: Bosch, BME280 data sheet BST-BME280-DS002, table 18 and section 4.2.2.</summary>
internal static class Bme280Registers
{
    public const byte CalibrationT1 = 0x88;
    public const byte CalibrationT2 = 0x8A;
    public const byte CalibrationP1 = 0x8E;
    public const byte CalibrationH1 = 0xA1;
    public const byte ChipId = 0xD0;
    public const byte Reset = 0xE0;
    public const byte CalibrationH2 = 0xE1;
    public const byte ControlHumidity = 0xF2;
    public const byte Status = 0xF3;
    public const byte ControlMeasurement = 0xF4;
    public const byte Configuration = 0xF5;
    public const byte Pressure = 0xF7;
    public const byte Temperature = 0xFA;
    public const byte Humidity = 0xFD;

    /// <summary>What the chip id register holds.</summary>
    public const byte ChipIdValue = 0x60;

    /// <summary>What the reset register takes.</summary>
    public const byte ResetValue = 0xB6;

    /// <summary>What a 20-bit result register holds when its measurement was skipped, or none was made since reset.</summary>
    public const int Skipped20 = 0x80000;

    /// <summary>What the humidity register holds when its measurement was skipped, or none was made since reset.</summary>
    public const int Skipped16 = 0x8000;
}
