using System.Device.I2c;

namespace BoothWatch.Service.Sensors.Emulation;

/// <summary>One opened address of an emulated bus.</summary>
/// <param name="bus">The bus.</param>
/// <param name="settings">Bus number and address.</param>
internal sealed class EmulatedI2cDevice(EmulatedI2cBus bus, I2cConnectionSettings settings) : I2cDevice
{
    /// <inheritdoc/>
    public override I2cConnectionSettings ConnectionSettings { get; } = settings;

    private EmulatedChip Chip =>
        bus.ChipAt(ConnectionSettings.DeviceAddress) ?? throw EmulatedChip.NotAcknowledged();

    /// <inheritdoc/>
    public override void Read(Span<byte> buffer) => Chip.Read(buffer);

    /// <inheritdoc/>
    public override void Write(ReadOnlySpan<byte> buffer) => Chip.Write(buffer);

    /// <inheritdoc/>
    public override void WriteRead(ReadOnlySpan<byte> writeBuffer, Span<byte> readBuffer)
    {
        Chip.Write(writeBuffer);
        Chip.Read(readBuffer);
    }

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            bus.RemoveDevice(ConnectionSettings.DeviceAddress);
        }

        base.Dispose(disposing);
    }
}
