using BoothWatch.Film;

namespace BoothWatch.Service.Coat;

/// <summary>How a kind of coat is usually mixed and sprayed, where the shop does not say otherwise.</summary>
/// <param name="Lacquer">Id of the lacquer in config/materials.</param>
/// <param name="LacquerParts">Parts of lacquer by volume.</param>
/// <param name="ThinnerParts">Parts of thinner by volume.</param>
/// <param name="WetFilmUm">Wet film thickness, µm.</param>
/// <remarks>
/// Common practice, no source: a flash coat is four parts of thinner to one of lacquer and adds little build.
/// The other kinds are taken as lacquer ready to spray from the can; their wet films are assumed.
/// </remarks>
public sealed record CoatHabits(string Lacquer, double LacquerParts, double ThinnerParts, double WetFilmUm)
{
    private const string ClearLacquer = "nitrocellulose lacquer";

    /// <summary>The habits for a kind of coat.</summary>
    public static CoatHabits For(CoatKind kind) => kind switch
    {
        CoatKind.Flash => new(ClearLacquer, 1, 4, 40),
        CoatKind.Clear => new(ClearLacquer, 1, 0, 75),
        CoatKind.Colour => new("tinted nitrocellulose lacquer", 1, 0, 60),
        CoatKind.Sealer => new("nitrocellulose sanding sealer", 1, 0, 60),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "not a kind of coat"),
    };
}
