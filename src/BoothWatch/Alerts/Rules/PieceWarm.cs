using BoothWatch.Verdicts;

namespace BoothWatch.Alerts.Rules;

/// <summary>A piece that was seen too cold has become warm enough: good to know for who has gone to do something else. Off unless the shop wants it.</summary>
public sealed class PieceWarm : IAlertRule
{
    private static readonly TimeSpan Lasting = TimeSpan.FromSeconds(30);

    /// <inheritdoc/>
    public IEnumerable<AlertSign> Look(AlertState state, AlertMoment moment, AlertLimits limits)
    {
        if (!limits.TellPieceWarm || moment.Assessment is not { Warming: { State: WarmingState.Warm, WarmSinceS: double sinceS } warming } || sinceS > PieceWarming.NewsForS)
        {
            yield break;
        }

        TemperatureText text = new(limits.Policy.TemperatureUnit);
        yield return new AlertSign(
            "piece-warm",
            AlertKind.PieceWarm,
            AlertLevel.Notice,
            SignState.On,
            "The piece is warm",
            $"the piece has the {text.AtLeast(warming.TargetC)} that it must have, {text.By(warming.ClearanceC)} over the dew point",
            "look at the verdict before you load the gun")
        {
            After = Lasting,
        };
    }
}
