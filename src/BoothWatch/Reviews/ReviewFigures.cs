namespace BoothWatch.Reviews;

/// <summary>What the drying run in the recorded air gave.</summary>
public sealed record ReviewFigures
{
    /// <summary>Blush margin in the recorded, changing air, °C: by how much the dew point could have been higher all along. Negative: it blushes.</summary>
    public required double MarginC { get; init; }

    /// <summary>Standard uncertainty (k = 1) of <see cref="MarginC"/>, °C.</summary>
    public required double MarginUncertaintyC { get; init; }

    /// <summary>Margin that the shop wants: the required one and the expanded uncertainty, °C.</summary>
    public required double WantedMarginC { get; init; }

    /// <summary>Free water in the film at set, g/m².</summary>
    public required double WaterAtSetGPerM2 { get; init; }

    /// <summary>Most free water at any moment, g/m².</summary>
    public required double PeakWaterGPerM2 { get; init; }

    /// <summary>Free water at set above which a film counts as blushed, g/m².</summary>
    public required double ToleranceGPerM2 { get; init; }

    /// <summary>Time to set, s; null when it does not set within the longest run.</summary>
    public required double? TimeToSetS { get; init; }

    /// <summary>Time to set of the usual coat in the reference air, s; null when that does not set.</summary>
    public required double? ReferenceTimeToSetS { get; init; }

    /// <summary>Lowest film temperature, °C.</summary>
    public required double LowestFilmTemperatureC { get; init; }

    /// <summary>When the film first fell below the dew point, s after it landed; null when it never did.</summary>
    public required double? BelowDewPointAfterS { get; init; }

    /// <summary>How long it was below the dew point, s.</summary>
    public required double BelowDewPointForS { get; init; }

    /// <summary>By how much it was below the dew point at most, °C; 0 when it never was.</summary>
    public required double BelowDewPointByC { get; init; }

    /// <summary>Since when a coat like this one would have had less than no margin, UTC; null when it had some until set.</summary>
    public required DateTimeOffset? MarginNegativeSince { get; init; }

    /// <summary>Least margin of a coat like this one in the air of any moment from landing to set, °C.</summary>
    public required double LeastMomentMarginC { get; init; }

    /// <summary>True when the film skins while much solvent is left.</summary>
    public required bool SolventTrappingRisk { get; init; }
}
