using System.Device.I2c;
using BoothWatch.Service.Sensors.Emulation;

namespace BoothWatch.Service.Sensors.Mlx90614;

/// <summary>The MLX90614 in the configuration. Its address can be rewritten, so any that a device may have is allowed.</summary>
public sealed class Mlx90614Part() : I2cPart("mlx90614", [Mlx90614Sensor.DefaultAddress, .. AnyOther()], [SensorRole.Piece])
{
    private const byte AmbientWord = 0x06;

    /// <inheritdoc/>
    public override IReadOnlyList<int> UsualAddresses => [Mlx90614Sensor.DefaultAddress];

    /// <inheritdoc/>
    /// <remarks>Reads the ambient temperature, whose packet error code covers address and command. Source: Melexis, MLX90614 data sheet, section 8.4.5.</remarks>
    public override bool Recognises(I2cDevice device)
    {
        ArgumentNullException.ThrowIfNull(device);
        Span<byte> answer = stackalloc byte[3];
        device.WriteRead([AmbientWord], answer);
        return new Mlx90614AnswerCheck(device.ConnectionSettings.DeviceAddress).Received([AmbientWord], answer) is null;
    }

    /// <inheritdoc/>
    protected override EmulatedChip Emulate(SensorRole role, SensorOptions options, SensorWiring wiring) => new EmulatedMlx90614(
        () => wiring.Shop.Now().PieceTemperatureC,
        () => wiring.Shop.Now().BoothAir.TemperatureC,
        AddressOf(options) ?? Mlx90614Sensor.DefaultAddress,
        wiring.Shop.SeedOf(role));

    /// <inheritdoc/>
    protected override ISensor Create(SensorRole role, SensorOptions options, I2cPlace place, SensorWiring wiring) =>
        new Mlx90614Sensor(role, place, wiring.Buses);

    private static IEnumerable<int> AnyOther() =>
        Enumerable.Range(0x08, 0x70).Where(address => address != Mlx90614Sensor.DefaultAddress);
}
