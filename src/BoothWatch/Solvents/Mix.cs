namespace BoothWatch.Solvents;

/// <summary>What is in the cup: solvents and polymer by volume.</summary>
/// <param name="Solvents">Volume fraction of each solvent in the whole mix, 0 to 1.</param>
/// <param name="PolymerVolumeFraction">Volume fraction of everything that stays, 0 to 1; all fractions sum to 1.</param>
public sealed record Mix(IReadOnlyList<(Solvent Solvent, double VolumeFraction)> Solvents, double PolymerVolumeFraction);
