namespace BoothWatch.Film;

/// <summary>What the drying-film model says of one coat in one air.</summary>
public sealed record BlushAnswer
{
    /// <summary>Retarder level that all figures of this answer belong to, % by volume of the unretarded mix.</summary>
    public required double RetarderPct { get; init; }

    /// <summary>Time until the film sets, s; null when it does not set within the longest run.</summary>
    public required double? TimeToSetS { get; init; }

    /// <summary>Lowest film temperature of the run, °C.</summary>
    public required double LowestFilmTemperatureC { get; init; }

    /// <summary>Free water in the film at set, g/m².</summary>
    public required double WaterAtSetGPerM2 { get; init; }

    /// <summary>Relative humidity at which blush just begins in air of this temperature, %; 100 when saturated air does not blush it.</summary>
    public required double CriticalHumidityPct { get; init; }

    /// <summary>Dew point at the critical humidity, °C.</summary>
    public required double CriticalDewPointC { get; init; }

    /// <summary>Blush margin: critical dew point minus dew point now, °C. Positive is good.</summary>
    public required double BlushMarginC { get; init; }

    /// <summary>Standard uncertainty (k = 1) of the blush margin, °C: sensors and model.</summary>
    public required double MarginUncertaintyC { get; init; }

    /// <summary>Least retarder level of the ladder whose margin covers the required margin plus the expanded uncertainty; null where none serves.</summary>
    public required double? RecommendedRetarderPct { get; init; }

    /// <summary>Blush margin at the highest level of the ladder, °C: how far off the whole ladder is when none serves.</summary>
    public required double MarginAtHighestRetarderC { get; init; }

    /// <summary>True when solvent risks being trapped: the film skins while much solvent is left (too hot or too heavy).</summary>
    public required bool SolventTrappingRisk { get; init; }
}
