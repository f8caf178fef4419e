using System.Collections.Immutable;
using BoothWatch.Limits;

namespace BoothWatch.Service.Limits;

/// <summary>What is known of the shop's own limit now.</summary>
/// <param name="Limit">The limit; null before it was first found, and while the journal cannot be read.</param>
/// <param name="Curve">The chance of blushing over the margin; empty when it is not known.</param>
/// <param name="Evidence">What it rests on; null when <paramref name="Limit"/> is.</param>
/// <param name="WaitsForCoat">True while a change waits for the end of the coat being sprayed.</param>
/// <param name="Trouble">Why it is not known; null when it is.</param>
public sealed record LimitState(ShopLimit? Limit, ImmutableArray<BlushCurvePoint> Curve, LimitEvidence? Evidence, bool WaitsForCoat, string? Trouble);
