namespace BoothWatch.Service.Page;

/// <summary>A drawn chart.</summary>
/// <param name="Svg">The picture.</param>
/// <param name="IsOfThePast">False when the past could not be read: then the picture says so and why.</param>
public sealed record ChartPicture(string Svg, bool IsOfThePast);
