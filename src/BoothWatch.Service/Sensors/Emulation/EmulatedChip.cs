namespace BoothWatch.Service.Sensors.Emulation;

/// <summary>
/// A chip on an emulated bus: it understands what a binding writes, answers as the real one does, and can be made to fail.
/// </summary>
/// <param name="seed">Seed of its noise: the same seed gives the same noise.</param>
public abstract class EmulatedChip(int seed)
{
    /// <summary>What each conversion under <see cref="BusFault.Drift"/> adds, as a fraction of the full scale.</summary>
    protected const double DriftPerConversion = 0.0005;

    private readonly Lock _lock = new();
    private readonly Random _random = new(seed);
    private int _driftedConversions;

    /// <summary>Asked at each transfer and each conversion: what is wrong with the chip now.</summary>
    public Func<BusFault> Fault { get; set; } = () => BusFault.None;

    /// <summary>Index of a check byte in an answer; null when there is none.</summary>
    protected virtual int? CheckByte => null;

    /// <summary>What the drift adds now, as a fraction of the full scale.</summary>
    protected double DriftOfScale => _driftedConversions * DriftPerConversion;

    /// <summary>A write transfer, address byte excluded.</summary>
    /// <exception cref="IOException">The chip does not acknowledge.</exception>
    public void Write(ReadOnlySpan<byte> bytes)
    {
        lock (_lock)
        {
            ThrowIfSilent();
            OnWrite(bytes);
        }
    }

    /// <summary>A read transfer.</summary>
    /// <exception cref="IOException">The chip does not acknowledge.</exception>
    public void Read(Span<byte> bytes)
    {
        lock (_lock)
        {
            ThrowIfSilent();
            OnRead(bytes);
            switch (Fault())
            {
                case BusFault.AllZero:
                    bytes.Clear();
                    break;
                case BusFault.AllOnes:
                    bytes.Fill(0xFF);
                    break;
                case BusFault.BadCrc when CheckByte < bytes.Length:
                    bytes[CheckByte.Value] ^= 0x5A;
                    break;
                default:
                    break;
            }
        }
    }

    /// <summary>The exception that a Linux bus driver raises when nothing acknowledges (EREMOTEIO).</summary>
    internal static IOException NotAcknowledged() => new("Error 121 performing I2C data transfer.");

    /// <summary>Takes the bytes of a write transfer.</summary>
    protected abstract void OnWrite(ReadOnlySpan<byte> bytes);

    /// <summary>Gives the bytes of a read transfer; throws <see cref="NotAcknowledged"/> where the chip would not acknowledge.</summary>
    protected abstract void OnRead(Span<byte> bytes);

    /// <summary>Says whether a new conversion result replaces the last one, and lets the drift grow.</summary>
    protected bool Converts()
    {
        BusFault fault = Fault();
        if (fault == BusFault.Drift)
        {
            _driftedConversions++;
        }

        return fault != BusFault.Stuck;
    }

    /// <summary>Normally distributed noise of a standard deviation.</summary>
    protected double Noise(double standardDeviation)
    {
        double radius = Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble()));
        return standardDeviation * radius * Math.Cos(2 * Math.PI * _random.NextDouble());
    }

    private void ThrowIfSilent()
    {
        if (Fault() == BusFault.NoAcknowledge)
        {
            throw NotAcknowledged();
        }
    }
}
