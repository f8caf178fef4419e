namespace BoothWatch.Alerts.Rules;

/// <summary>One rule of alerts.</summary>
public interface IAlertRule
{
    /// <summary>What it sees now; at most one sign a key.</summary>
    /// <param name="state">The state, which has seen the moment.</param>
    /// <param name="moment">The moment.</param>
    /// <param name="limits">The limits.</param>
    IEnumerable<AlertSign> Look(AlertState state, AlertMoment moment, AlertLimits limits);
}
