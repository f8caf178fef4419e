namespace BoothWatch.Alerts;

/// <summary>One step of one episode.</summary>
/// <param name="Step">What happened.</param>
/// <param name="Episode">The episode after it.</param>
/// <param name="Title">What the message says in a few words: of the alert, or of the all-clear.</param>
/// <param name="Finding">What was found.</param>
/// <param name="Action">What to do; may be empty.</param>
/// <param name="NotBefore">An all-clear waits for the end of quiet hours, UTC; null: now.</param>
public sealed record EpisodeChange(EpisodeStep Step, Episode Episode, string Title, string Finding, string Action, DateTimeOffset? NotBefore = null);
