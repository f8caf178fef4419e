namespace BoothWatch.Alerts;

/// <summary>What a rule sees at one moment.</summary>
/// <param name="Key">What it is about; there is at most one open episode a key, for example <c>film:12</c>.</param>
/// <param name="Kind">Kind of the alert.</param>
/// <param name="Level">How much it presses.</param>
/// <param name="State">What it does to the episode.</param>
/// <param name="Title">The message in a few words; for <see cref="SignState.Off"/> those of the all-clear.</param>
/// <param name="Finding">What was found, with number and unit.</param>
/// <param name="Action">What to do; may be empty.</param>
public sealed record AlertSign(string Key, AlertKind Kind, AlertLevel Level, SignState State, string Title, string Finding, string Action)
{
    /// <summary>How long it must be on without a break before an episode begins. Default none.</summary>
    public TimeSpan After { get; init; }
}
