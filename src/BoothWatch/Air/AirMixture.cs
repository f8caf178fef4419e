namespace BoothWatch.Air;

/// <summary>What two air streams give when they mix.</summary>
/// <param name="Air">The mixed air; saturated when <see cref="IsSupersaturated"/>.</param>
/// <param name="FogKgPerKgDryAir">Water that the mixed air cannot hold as vapour, kg a kg of dry air; zero when all of it stays vapour.</param>
public sealed record AirMixture(MoistAir Air, double FogKgPerKgDryAir)
{
    /// <summary>True when the streams mix to fog: the line between them crosses the saturation curve.</summary>
    public bool IsSupersaturated => FogKgPerKgDryAir > 0;
}
