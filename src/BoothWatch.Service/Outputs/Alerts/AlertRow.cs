namespace BoothWatch.Service.Outputs.Alerts;

/// <summary>One alert as the page lists it.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Kind">Its kind, in words.</param>
/// <param name="Level">How much it presses: notice, warning or urgent.</param>
/// <param name="Title">The message in a few words.</param>
/// <param name="Finding">What was last found.</param>
/// <param name="Action">What to do; may be empty.</param>
/// <param name="Began">When it began, UTC.</param>
/// <param name="Told">When it was told, UTC; null while quiet hours hold it back, or for good when it was over before.</param>
/// <param name="Ended">When it was over, UTC; null while it goes on.</param>
/// <param name="End">How it ended: cleared, lapsed or replaced; null while it goes on.</param>
/// <param name="Acknowledged">When somebody acknowledged it, UTC; null while nobody has.</param>
/// <param name="AcknowledgedBy">Where: page, link or mqtt; null while nobody has.</param>
public sealed record AlertRow(
    string Id,
    string Kind,
    string Level,
    string Title,
    string Finding,
    string Action,
    DateTimeOffset Began,
    DateTimeOffset? Told,
    DateTimeOffset? Ended,
    string? End,
    DateTimeOffset? Acknowledged,
    string? AcknowledgedBy);
