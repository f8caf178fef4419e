using System.Collections.Immutable;
using BoothWatch.Readings;

namespace BoothWatch.Service.Page;

/// <summary>One configured sensor, as the page names it.</summary>
/// <param name="Name">The configured name, for example <c>boothAir</c>.</param>
/// <param name="Description">What and where it is.</param>
/// <param name="Emulated">True while it is emulated and measures nothing real.</param>
/// <param name="Quantities">What it measures.</param>
public sealed record SensorLine(string Name, string Description, bool Emulated, ImmutableArray<Quantity> Quantities);
