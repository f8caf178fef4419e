using BoothWatch.Service.Sensors.Emulation;

namespace BoothWatch.Service.Sensors.Mlx90614;

/// <summary>The MLX90614 in the configuration. Its address can be rewritten, so any that a device may have is allowed.</summary>
public sealed class Mlx90614Part() : I2cPart("mlx90614", [Mlx90614Sensor.DefaultAddress, .. AnyOther()], [SensorRole.Piece])
{
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
