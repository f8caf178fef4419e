using BoothWatch.Readings;

namespace BoothWatch.Verdicts;

/// <summary>Everything that a rule may look at.</summary>
public sealed record Evidence
{
    /// <summary>What was measured.</summary>
    public required BoothSnapshot Snapshot { get; init; }

    /// <summary>The shop's limits.</summary>
    public required VerdictPolicy Policy { get; init; }

    /// <summary>The booth air; null when it is not known.</summary>
    public required AirFindings? Air { get; init; }

    /// <summary>What the film model said; null when it was not asked or gave no answer.</summary>
    public required FilmFindings? Film { get; init; }

    /// <summary>Whether the piece is warm enough, and else when; null when that is not known.</summary>
    public PieceWarming? Warming { get; init; }

    /// <summary>Why there is no film answer, for people; null when there is one.</summary>
    public string? NoFilmCause { get; init; }

    /// <summary>Writes temperatures in the unit of the policy.</summary>
    public TemperatureText Text => new(Policy.TemperatureUnit);

    /// <summary>
    /// The reading of <paramref name="quantity"/>. A reading that is marked good but cannot be true
    /// (not a number, 0 %RH, a pressure of another planet) comes back as out of range, so that no rule can trust it.
    /// </summary>
    public Reading this[Quantity quantity]
    {
        get
        {
            Reading reading = Snapshot[quantity];
            return reading is { Quality: ReadingQuality.Good, Value: double value } && !Possible(quantity).Contains(value)
                ? reading with
                {
                    Value = null,
                    Quality = ReadingQuality.OutOfRange,
                    Cause = new Cause($"the value {QuantityUnit.Write(quantity, value)} cannot be true"),
                }
                : reading;
        }
    }

    /// <summary>The value of <paramref name="quantity"/> when it may be used, else null.</summary>
    public double? Trusted(Quantity quantity) => this[quantity] is { IsGood: true } reading ? reading.Value : null;

    /// <summary>True when no sensor at all is configured for <paramref name="quantity"/>; a configured one that is silent is not this.</summary>
    public bool HasNoSensor(Quantity quantity) =>
        Snapshot[quantity] is { Quality: ReadingQuality.Missing, Sensor.Length: 0 };

    // A humidity outside 0 to 100 % may pass as plausible for the part, but it has no dew point.
    private static PlausibleRange Possible(Quantity quantity) =>
        quantity is Quantity.BoothHumidity or Quantity.IntakeHumidity ? LegalHumidity : PlausibleRange.Of(quantity);

    private static readonly PlausibleRange LegalHumidity = new(0.1, 100);
}
