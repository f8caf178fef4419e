namespace BoothWatch.Verdicts.Rules;

/// <summary>
/// A piece much colder than the air dries slowly and draws moisture; a piece much warmer flashes the solvent off
/// from below and pops. Both ask for patience: common practice, no source.
/// </summary>
public sealed class PieceAgainstAir : IRule
{
    /// <inheritdoc />
    public string Name => "piece-against-air";

    /// <inheritdoc />
    public IEnumerable<Reason> Judge(Evidence evidence)
    {
        if (evidence.Air is not { PieceTemperatureC: double pieceC } air)
        {
            yield break;
        }

        TemperatureText text = evidence.Text;
        double warmerC = pieceC - air.TemperatureC;
        if (warmerC < -evidence.Policy.SlowDownPieceColderC)
        {
            yield return SlowDown($"piece {text.Of(pieceC)}, {text.By(warmerC)} colder than the air", $"let it warm in the booth to {text.AtLeast(evidence.Policy.WarmEnoughC(air.TemperatureC, air.DewPointC))} first{WarmingText.After(evidence.Warming)}");
        }
        else if (warmerC > evidence.Policy.SlowDownPieceWarmerC)
        {
            yield return SlowDown($"piece {text.Of(pieceC)}, {text.By(warmerC)} warmer than the air", "let it cool in the booth first");
        }
    }

    private Reason SlowDown(string finding, string action) => new(Name, Verdict.SlowDown, finding, action, RuleOrder.PieceAgainstAir);
}
