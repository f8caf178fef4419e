namespace BoothWatch.Service.Page;

/// <summary>What chart to draw.</summary>
/// <param name="From">Begin of the time axis.</param>
/// <param name="To">End of the time axis.</param>
/// <param name="Width">Width, CSS pixels.</param>
/// <param name="Height">Height, CSS pixels.</param>
/// <param name="Theme"><c>dark</c> or <c>light</c>.</param>
/// <param name="ShopSpeed">Shop seconds that pass in a real second: 1, or more where the scripted day is compressed.</param>
public sealed record ChartRequest(DateTimeOffset From, DateTimeOffset To, int Width, int Height, string Theme, double ShopSpeed = 1);
