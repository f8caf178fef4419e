using BoothWatch.Verdicts;

namespace BoothWatch.Jobs;

/// <summary>
/// The air in which a coat was begun, kept with the coat, and what the model said of this coat's own mix in that air
/// (the journal's margin is that of the cup in the settings, which may be another).
/// </summary>
public sealed record CoatMoment
{
    /// <summary>Time of the assessment, UTC.</summary>
    public required DateTimeOffset Time { get; init; }

    /// <summary>Air temperature, °C.</summary>
    public required double AirTemperatureC { get; init; }

    /// <summary>Relative humidity, %.</summary>
    public required double RelativeHumidityPct { get; init; }

    /// <summary>Station pressure, Pa.</summary>
    public required double PressurePa { get; init; }

    /// <summary>Dew point, °C.</summary>
    public required double DewPointC { get; init; }

    /// <summary>Temperature of the piece, °C; null when not known.</summary>
    public double? PieceTemperatureC { get; init; }

    /// <summary>The verdict that was shown.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>Blush margin of this coat, °C; null when the model had no answer.</summary>
    public double? BlushMarginC { get; init; }

    /// <summary>Standard uncertainty (k = 1) of <see cref="BlushMarginC"/>, °C.</summary>
    public double? MarginUncertaintyC { get; init; }

    /// <summary>Retarder level that was recommended for this coat, %; null where none served or nothing was known.</summary>
    public double? RecommendedRetarderPct { get; init; }
}
