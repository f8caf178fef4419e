using BoothWatch.Film;

namespace BoothWatch.Service.Advice;

/// <summary>A mix by solvent volume fractions, as a file of <c>--mix</c> gives it; <see cref="MixFileReader"/> reads it.</summary>
internal sealed record MixFile
{
    /// <summary>How far the fractions may be from a sum of 1.</summary>
    public const double SumTolerance = 0.001;

    /// <summary>Volume fraction of each solvent in the whole mix, by solvent id.</summary>
    public required IReadOnlyDictionary<string, double> Solvents { get; init; }

    /// <summary>Volume fraction of everything that stays.</summary>
    public required double PolymerVolumeFraction { get; init; }

    /// <summary>Wet film, µm; null: by kind of coat.</summary>
    public double? WetFilmUm { get; init; }

    /// <summary>What it is, for people; the name of the file when it does not say.</summary>
    public required string Name { get; init; }

    /// <summary>Id of the substrate; null when the file gives none, or describes one itself.</summary>
    public string? SubstrateId { get; init; }

    /// <summary>The substrate that the file describes itself; null when it does not.</summary>
    public Substrate? OwnSubstrate { get; init; }
}
