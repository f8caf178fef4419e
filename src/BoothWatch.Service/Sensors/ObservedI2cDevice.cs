using System.Device.I2c;

namespace BoothWatch.Service.Sensors;

/// <summary>
/// Stands between a device binding and the bus, passes every transfer on, and looks at the raw bytes of each answer.
/// The first thing found wrong since <see cref="Begin"/> is kept in <see cref="Fault"/>.
/// </summary>
/// <param name="inner">The device on the bus; owned.</param>
/// <param name="check">What the part must show.</param>
public sealed class ObservedI2cDevice(I2cDevice inner, AnswerCheck check) : I2cDevice
{
    private byte[] _sent = [];

    /// <summary>What was wrong first since <see cref="Begin"/>; null when nothing was.</summary>
    public string? Fault { get; private set; }

    /// <inheritdoc/>
    public override I2cConnectionSettings ConnectionSettings => inner.ConnectionSettings;

    /// <summary>Forgets the last fault: a new measurement begins.</summary>
    public void Begin() => Fault = null;

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
            Note(refused);
            throw;
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
            Note(refused);
            throw;
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
            Note(refused);
            throw;
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
        Fault ??= check.Received(_sent, answer);
        answer[..forBinding.Length].CopyTo(forBinding);
    }

    private void Note(IOException refused) => Fault ??=
        $"no acknowledge from address 0x{ConnectionSettings.DeviceAddress:X2} on bus {ConnectionSettings.BusId} ({refused.Message.TrimEnd('.')})";
}
