using BoothWatch.Verdicts;

namespace BoothWatch.Jobs;

/// <summary>The air of a span, summed up from the journal. A quantity without a good reading in the span is null.</summary>
public sealed record CoatAir
{
    /// <summary>Start of the span, UTC.</summary>
    public required DateTimeOffset From { get; init; }

    /// <summary>End of the span, UTC.</summary>
    public required DateTimeOffset To { get; init; }

    /// <summary>Assessments in the span; 0: nothing was recorded.</summary>
    public required long Count { get; init; }

    /// <summary>True when single rows were read; false when only whole minutes are left of the span.</summary>
    public required bool FromRows { get; init; }

    /// <summary>Air temperature, °C.</summary>
    public AirSpan? TemperatureC { get; init; }

    /// <summary>Relative humidity, %.</summary>
    public AirSpan? RelativeHumidityPct { get; init; }

    /// <summary>Dew point, °C.</summary>
    public AirSpan? DewPointC { get; init; }

    /// <summary>Temperature of the piece, °C.</summary>
    public AirSpan? PieceTemperatureC { get; init; }

    /// <summary>Blush margin of the cup in the settings at that time, °C (that of the coat itself is in <see cref="CoatMoment"/>).</summary>
    public AirSpan? BlushMarginC { get; init; }

    /// <summary>The worst verdict; null when nothing was recorded.</summary>
    public Verdict? WorstVerdict { get; init; }
}
