namespace BoothWatch.Readings;

/// <summary>When a reading of one sensor is no longer to be believed.</summary>
/// <remarks>The figures are common practice, no source, where none is given.</remarks>
public sealed record QualityLimits
{
    /// <summary>Values outside it are <see cref="ReadingQuality.OutOfRange"/>.</summary>
    public required PlausibleRange Range { get; init; }

    /// <summary>Age from which the last value is <see cref="ReadingQuality.Stale"/>. Default 5 s: five missed reads at one a second.
    /// Until then the last value bridges reads that fail.</summary>
    public TimeSpan StaleAfter { get; init; } = TimeSpan.FromSeconds(5);

    /// <summary>Time without a change of a single bit from which the value is <see cref="ReadingQuality.Frozen"/>; null for a
    /// quantity that may stand still. Default 1 min for the booth air, which a front changes within minutes: a part that works gives new
    /// digits almost every second by its own noise (an SHT4x: 0.013 °C and 0.027 % at steps of 0.003 °C and 0.002 %). Default 10 min for
    /// intake, piece and pressure, which move slower or are resolved more coarsely (0.02 °C).</summary>
    public TimeSpan? FrozenAfter { get; init; }

    /// <summary>Fewest equal answers in a row that count as frozen, so that a sensor asked once in ten minutes is not. Default 30.</summary>
    public int FrozenAnswers { get; init; } = 30;

    /// <summary>Value from which a humidity is <see cref="ReadingQuality.Saturated"/>, %; null for other quantities. Default 99.5 %.</summary>
    public double? SaturatedFromPct { get; init; }

    /// <summary>Value down from which a humidity is <see cref="ReadingQuality.Saturated"/> at the dry end, %; null for other quantities.
    /// Default 0.5 %: no shop is that dry, but a dead part reads zero.</summary>
    public double? DryEndPct { get; init; }

    /// <summary>Humidity from which the sensor is within 1 °C of its own dew point, %; null where it is not judged. Default 94 % in
    /// the booth: psat(19 °C)/psat(20 °C) is 93.9 % (93.2 % at 5 °C, 94.6 % at 35 °C). Not judged at the intake, where fog
    /// and rain are ordinary news.</summary>
    public double? CondensingFromPct { get; init; }

    /// <summary>Time at or above <see cref="CondensingFromPct"/> that makes the reading <see cref="ReadingQuality.Condensing"/>. Default 1 min.</summary>
    public TimeSpan CondensingAfter { get; init; } = TimeSpan.FromMinutes(1);

    /// <summary>Time below <see cref="CondensingFromPct"/> after which a wetted sensor is believed again. Default 2 min.</summary>
    public TimeSpan DryAfter { get; init; } = TimeSpan.FromMinutes(2);

    /// <summary>The default limits of a quantity that a part measures.</summary>
    public static QualityLimits Of(Quantity quantity)
    {
        bool isHumidity = quantity is Quantity.BoothHumidity or Quantity.IntakeHumidity;
        bool isBoothAir = quantity is Quantity.BoothTemperature or Quantity.BoothHumidity;
        bool mayStandStill = quantity is Quantity.ExhaustProof or Quantity.FilterPressureDrop;
        return new QualityLimits
        {
            Range = PlausibleRange.Of(quantity),
            FrozenAfter = mayStandStill ? null : TimeSpan.FromMinutes(isBoothAir ? 1 : 10),
            SaturatedFromPct = isHumidity ? 99.5 : null,
            DryEndPct = isHumidity ? 0.5 : null,
            CondensingFromPct = quantity == Quantity.BoothHumidity ? 94 : null,
        };
    }

    /// <summary>The limits of a value that a person types in: as <see cref="Of"/>, but it may stand still, and it is stale only
    /// when it no longer holds.</summary>
    /// <param name="quantity">What was measured by hand.</param>
    /// <param name="hold">How long a value holds.</param>
    public static QualityLimits OfTypedIn(Quantity quantity, TimeSpan hold) => Of(quantity) with { FrozenAfter = null, StaleAfter = hold };
}
