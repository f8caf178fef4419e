namespace BoothWatch.Service.Sensors;

/// <summary>
/// What one kind of part must show in its raw bytes before a value computed from them is believed.
/// The bindings accept more than that: some turn a bad check byte into 0.0, others do not read it at all.
/// </summary>
public abstract class AnswerCheck
{
    /// <summary>Bytes to read beyond those that the binding asks for, for a check byte that it leaves on the bus.</summary>
    public virtual int ExtraBytes => 0;

    /// <summary>Takes note of bytes that the binding sends.</summary>
    /// <param name="written">The bytes after the address.</param>
    public virtual void Sent(ReadOnlySpan<byte> written)
    {
    }

    /// <summary>Judges one answer.</summary>
    /// <param name="written">What was sent last before it.</param>
    /// <param name="answer">The raw bytes, with any extra ones.</param>
    /// <returns>What is wrong with them; null when nothing is.</returns>
    public abstract string? Received(ReadOnlySpan<byte> written, ReadOnlySpan<byte> answer);

    /// <summary>True when every byte is <paramref name="value"/>.</summary>
    protected static bool AllAre(ReadOnlySpan<byte> bytes, byte value) => bytes.IndexOfAnyExcept(value) < 0;
}
