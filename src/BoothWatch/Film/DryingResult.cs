namespace BoothWatch.Film;

/// <summary>What one drying run gave.</summary>
public sealed record DryingResult
{
    /// <summary>Time until the film sets, s; null when it does not set within the longest run.</summary>
    public required double? TimeToSetS { get; init; }

    /// <summary>Lowest film temperature until set, °C.</summary>
    public required double LowestFilmTemperatureC { get; init; }

    /// <summary>Film temperature at set (or at the end of a run that does not set), °C.</summary>
    public required double LastFilmTemperatureC { get; init; }

    /// <summary>Free water in the film at set (or at the end of a run that does not set), g/m².</summary>
    public required double WaterAtSetGPerM2 { get; init; }

    /// <summary>Most free water at any moment until set, g/m².</summary>
    public required double PeakWaterGPerM2 { get; init; }

    /// <summary>Péclet number of drying, L²/(D t): above 1 the surface skins before solvent from below can follow.</summary>
    public required double DryingPeclet { get; init; }

    /// <summary>Accepted steps of the solver.</summary>
    public required int Steps { get; init; }

    /// <summary>The run in time; empty unless asked for.</summary>
    public required IReadOnlyList<DryingPoint> Trajectory { get; init; }

    /// <summary>True when the film skins while much solvent is left (too hot or too heavy).</summary>
    public bool SolventTrappingRisk => DryingPeclet > 1;
}
