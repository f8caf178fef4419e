using BoothWatch.Film;
using BoothWatch.Solvents;

namespace BoothWatch.Service.Materials;

/// <summary>Everything in config/materials, by id. Solvents are also found by their short names.</summary>
public sealed record MaterialCatalogue
{
    /// <summary>Solvents by id and by short name, letter case ignored.</summary>
    public required IReadOnlyDictionary<string, Solvent> Solvents { get; init; }

    /// <summary>Lacquers by id.</summary>
    public required IReadOnlyDictionary<string, Lacquer> Lacquers { get; init; }

    /// <summary>Thinners by id.</summary>
    public required IReadOnlyDictionary<string, Thinner> Thinners { get; init; }

    /// <summary>Retarders by id.</summary>
    public required IReadOnlyDictionary<string, Retarder> Retarders { get; init; }

    /// <summary>Substrates by id.</summary>
    public required IReadOnlyDictionary<string, Substrate> Substrates { get; init; }
}
