namespace BoothWatch.Verdicts.Rules;

/// <summary>
/// The hard stop for a wet piece: a surface less than 3 °C above the dew point (ISO 8502-4) means wait.
/// The 3 °C already cover what portable instruments miss, so no uncertainty is added. A piece that is not measured
/// counts as warm as the air.
/// </summary>
public sealed class PieceNearDewPoint : IRule
{
    /// <summary>The last digit that is shown, °C: nobody warms a piece by less.</summary>
    private const double ShownC = 0.1;

    /// <inheritdoc />
    public string Name => "piece-near-dew-point";

    /// <inheritdoc />
    public IEnumerable<Reason> Judge(Evidence evidence)
    {
        if (evidence.Air is not { } air)
        {
            yield break;
        }

        double clearanceC = (air.PieceTemperatureC ?? air.TemperatureC) - air.DewPointC;
        // Written so that a clearance that is not a number waits.
        if (clearanceC >= evidence.Policy.DewClearanceC)
        {
            yield break;
        }

        TemperatureText text = evidence.Text;
        string what = air.PieceTemperatureC is null ? "air" : "piece";
        string where = clearanceC >= 0
            ? $"{text.By(clearanceC)} over the dew point"
            : $"{text.By(clearanceC)} under the dew point";
        yield return new Reason(
            Name,
            Verdict.Wait,
            $"{what} {text.Of(air.PieceTemperatureC ?? air.TemperatureC)}, {where}",
            ActionOf(evidence, air),
            RuleOrder.PieceNearDewPoint);
    }

    private static string ActionOf(Evidence evidence, AirFindings air)
    {
        double warmC = evidence.Policy.WarmEnoughC(air.TemperatureC, air.DewPointC);
        if (air.PieceTemperatureC is not { } pieceC || warmC - pieceC < ShownC)
        {
            return "wait for drier air";
        }

        string warm = evidence.Text.AtLeast(warmC);
        return evidence.Film is { HoldsWithWarmPiece: false }
            ? $"wait for drier air, warming the piece alone, to {warm}, will not do"
            : $"wait, and warm the piece to {warm} or more{WarmingText.After(evidence.Warming)}";
    }
}
