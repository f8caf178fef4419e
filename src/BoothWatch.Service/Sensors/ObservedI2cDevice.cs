using System.Device.I2c;

namespace BoothWatch.Service.Sensors;

/// <summary>
/// Stands between a device binding and the bus, passes every transfer on, and looks at the raw bytes of each answer.
/// What is wrong with them is thrown before the binding sees them, as an <see cref="IOException"/> that says what it is.
/// </summary>
/// <param name="inner">The device on the bus; owned.</param>
/// <param name="check">What the part must show.</param>
public sealed class ObservedI2cDevice(I2cDevice inner, AnswerCheck check) : I2cDevice
{
    private byte[] _sent = [];

    /// <inheritdoc/>
    public override I2cConnectionSettings ConnectionSettings => inner.ConnectionSettings;

    /// <inheritdoc/>
    public override void Write(ReadOnlySpan<byte> buffer)
    {
        Remember(buffer);
        try
        {
            inner.Write(buffer);
        }
        catch (IOException refused)
        {
            throw NotAcknowledged(refused);
        }
    }

    /// <inheritdoc/>
    public override void Read(Span<byte> buffer)
    {
        Span<byte> answer = stackalloc byte[buffer.Length + check.ExtraBytes];
        try
        {
            inner.Read(answer);
        }
        catch (IOException refused)
        {
            throw NotAcknowledged(refused);
        }

        Judge(answer, buffer);
    }

    /// <inheritdoc/>
    public override void WriteRead(ReadOnlySpan<byte> writeBuffer, Span<byte> readBuffer)
    {
        Remember(writeBuffer);
        Span<byte> answer = stackalloc byte[readBuffer.Length + check.ExtraBytes];
        try
        {
            inner.WriteRead(writeBuffer, answer);
        }
        catch (IOException refused)
        {
            throw NotAcknowledged(refused);
        }

        Judge(answer, readBuffer);
    }

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            inner.Dispose();
        }

        base.Dispose(disposing);
    }

    private void Remember(ReadOnlySpan<byte> sent)
    {
        _sent = sent.ToArray();
        check.Sent(sent);
    }

    private void Judge(ReadOnlySpan<byte> answer, Span<byte> forBinding)
    {
        if (check.Received(_sent, answer) is { } wrong)
        {
            throw new IOException(wrong);
        }

        answer[..forBinding.Length].CopyTo(forBinding);
    }

    private IOException NotAcknowledged(IOException refused) => new(
        $"no acknowledge from address 0x{ConnectionSettings.DeviceAddress:X2} on bus {ConnectionSettings.BusId} ({refused.Message.TrimEnd('.')})",
        refused);
}
