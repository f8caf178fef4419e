using System.Collections.Immutable;

namespace BoothWatch.Service.Sensors;

/// <summary>What a sensor gave when asked: samples, or no reading with its cause. Never both.</summary>
public sealed record SensorAnswer
{
    private SensorAnswer(ImmutableArray<Sample> samples, string? noReadingCause) =>
        (Samples, NoReadingCause) = (samples, noReadingCause);

    /// <summary>The measured values; empty when there is no reading.</summary>
    public ImmutableArray<Sample> Samples { get; }

    /// <summary>Why there is no reading, for example <c>CRC of the humidity word is 0x12, expected 0x92</c>; null when there is one.</summary>
    public string? NoReadingCause { get; }

    /// <summary>An answer with values.</summary>
    public static SensorAnswer Of(params ReadOnlySpan<Sample> samples) => new([.. samples], null);

    /// <summary>An answer without a value.</summary>
    public static SensorAnswer NoReading(string cause) => new([], cause);
}
