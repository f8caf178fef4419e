namespace BoothWatch.Service.Access;

/// <summary>What the caller may do now.</summary>
/// <param name="SignedIn">Whether the request brings a session that holds.</param>
/// <param name="MayRead">Whether the caller may read.</param>
/// <param name="SignInWith"><c>secret</c>, <c>start-code</c> (no secret is set, and the caller is this machine) or <c>nothing</c> (no secret is set, and the caller is another).</param>
/// <param name="Until">When the session ends at the latest, UTC; null without one. Idle it ends before.</param>
public sealed record SessionAnswer(bool SignedIn, bool MayRead, string SignInWith, DateTime? Until);
