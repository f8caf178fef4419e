using System.Text.Json.Serialization;

namespace BoothWatch.Verdicts;

/// <summary>What the drying-film model said of the coat in hand, as the outputs carry it (see <see cref="Film.BlushAnswer"/> for the meaning of each figure).</summary>
public sealed record FilmFindings
{
    /// <summary>Kind of coat, lower case: flash, clear, colour, sealer.</summary>
    public required string Coat { get; init; }

    /// <summary>What is in the cup, for people.</summary>
    public required string Mix { get; init; }

    /// <summary>Unretarded mix in the cup, mL.</summary>
    public required double CupMl { get; init; }

    /// <summary>Retarder to add to the unretarded cup for <see cref="RecommendedRetarderPct"/>, mL; null where no level serves.</summary>
    public double? RecommendedRetarderMl => RecommendedRetarderPct is { } pct ? RetarderMl(pct) : null;

    /// <summary>Retarder level in the cup, %; null when no cup is mixed yet.</summary>
    public required double? LoadedRetarderPct { get; init; }

    /// <summary>
    /// Retarder to add to the full cup as it is now, so that it reaches <see cref="RecommendedRetarderPct"/>, mL: 0 when it holds enough,
    /// null where no level serves.
    /// </summary>
    public double? RetarderToAddMl =>
        RecommendedRetarderPct is { } pct ? CupMl * Math.Max(0, pct - (LoadedRetarderPct ?? 0)) / 100 : null;

    /// <summary>
    /// Whether this cup would hold the air with the piece warmed as far as its rules ask; null when the piece is warm enough, or the model has no answer.
    /// </summary>
    public bool? HoldsWithWarmPiece { get; init; }

    /// <summary>Retarder level that the figures below belong to, %.</summary>
    public required double RetarderPct { get; init; }

    /// <summary>Time until the film sets, s; null when it does not set within the longest run.</summary>
    public required double? TimeToSetS { get; init; }

    /// <summary>Lowest film temperature, °C.</summary>
    public required double LowestFilmTemperatureC { get; init; }

    /// <summary>Free water in the film at set, g/m².</summary>
    public required double WaterAtSetGPerM2 { get; init; }

    /// <summary>Critical humidity, %.</summary>
    public required double CriticalHumidityPct { get; init; }

    /// <summary>Critical dew point, °C.</summary>
    public required double CriticalDewPointC { get; init; }

    /// <summary>Blush margin, °C.</summary>
    public required double BlushMarginC { get; init; }

    /// <summary>
    /// Margin below which a cup that is mixed must wait, °C, 0 or more: above 0 only where this shop's own coats say so. Limits hold for
    /// one assessment, so it travels with the margin; in no answer, where <c>/api/limit</c> has it.
    /// </summary>
    [JsonIgnore]
    public double BlushesBelowC { get; init; }

    /// <summary>Standard uncertainty (k = 1) of the blush margin, °C.</summary>
    public required double MarginUncertaintyC { get; init; }

    /// <summary>Least retarder level that serves, %; null where none serves.</summary>
    public required double? RecommendedRetarderPct { get; init; }

    /// <summary>Blush margin at the highest level of the ladder, °C.</summary>
    public required double MarginAtHighestRetarderC { get; init; }

    /// <summary>True when solvent risks being trapped.</summary>
    public required bool SolventTrappingRisk { get; init; }

    /// <summary>Retarder that makes a level of the unretarded cup, mL.</summary>
    /// <param name="retarderPct">Level, % by volume of the unretarded mix.</param>
    public double RetarderMl(double retarderPct) => CupMl * retarderPct / 100;
}
