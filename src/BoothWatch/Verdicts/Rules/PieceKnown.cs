using BoothWatch.Readings;

namespace BoothWatch.Verdicts.Rules;

/// <summary>
/// The piece decides where dew falls, so its temperature is wanted. A sensor that is there but cannot be trusted
/// always means wait; a piece that no sensor looks at means wait only where the policy requires one.
/// </summary>
public sealed class PieceKnown : IRule
{
    /// <inheritdoc />
    public string Name => "piece-unknown";

    /// <inheritdoc />
    public IEnumerable<Reason> Judge(Evidence evidence)
    {
        Reading piece = evidence[Quantity.PieceTemperature];
        if (piece.IsGood)
        {
            yield break;
        }

        if (evidence.HasNoSensor(Quantity.PieceTemperature) && !evidence.Policy.RequirePieceTemperature)
        {
            yield return new Reason(
                Name,
                Verdict.Spray,
                "piece not measured, taken as warm as the air",
                "let it stand in the booth until it is",
                RuleOrder.PieceUnknown);
            yield break;
        }

        string action = evidence.HasNoSensor(Quantity.PieceTemperature)
            ? "wait, measure the piece and type its temperature in, or add a sensor for it"
            : SensorAdvice.Action(piece);
        yield return new Reason(
            Name, Verdict.Wait, $"no piece temperature ({SensorAdvice.Cause(piece, evidence.Text)})", action, RuleOrder.PieceUnknown);
    }
}
