using System.Globalization;
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
            (double least, double most) = Possible(quantity);
            return reading is { Quality: ReadingQuality.Good, Value: double value } && !(value >= least && value <= most)
                ? reading with
                {
                    Value = null,
                    Quality = ReadingQuality.OutOfRange,
                    Cause = string.Create(CultureInfo.InvariantCulture, $"the value {value} cannot be true"),
                }
                : reading;
        }
    }

    /// <summary>The value of <paramref name="quantity"/> when it may be used, else null.</summary>
    public double? Trusted(Quantity quantity) => this[quantity] is { IsGood: true } reading ? reading.Value : null;

    private static (double Least, double Most) Possible(Quantity quantity) => quantity switch
    {
        Quantity.BoothTemperature or Quantity.IntakeTemperature => (-40, 60),
        Quantity.PieceTemperature => (-40, 120),
        Quantity.BoothHumidity or Quantity.IntakeHumidity => (0.1, 100),
        Quantity.StationPressure => (50_000, 110_000),
        Quantity.ExhaustProof => (0, 1),
        Quantity.FilterPressureDrop => (-5_000, 5_000),
        _ => throw new ArgumentOutOfRangeException(nameof(quantity), quantity, "Unknown quantity."),
    };
}
