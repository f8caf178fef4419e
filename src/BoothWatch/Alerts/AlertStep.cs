using System.Collections.Immutable;

namespace BoothWatch.Alerts;

/// <summary>The outcome of one look.</summary>
/// <param name="After">The state to go on from.</param>
/// <param name="Changes">What happened to episodes, in order.</param>
public sealed record AlertStep(AlertState After, ImmutableArray<EpisodeChange> Changes);
