namespace BoothWatch.Jobs;

/// <summary>What was in the cup, by the ids of config/materials. Parts and percentages are by volume.</summary>
/// <param name="Lacquer">Lacquer, an id.</param>
/// <param name="LacquerParts">Parts of lacquer, above 0.</param>
/// <param name="Thinner">Thinner, an id.</param>
/// <param name="ThinnerParts">Parts of thinner, 0 or more.</param>
/// <param name="Retarder">Retarder, an id.</param>
/// <param name="RetarderPct">Retarder level, % by volume of the unretarded mix.</param>
public sealed record CoatMix(string Lacquer, double LacquerParts, string Thinner, double ThinnerParts, string Retarder, double RetarderPct);
