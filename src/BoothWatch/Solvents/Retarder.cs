namespace BoothWatch.Solvents;

/// <summary>A retarder: slow solvent that keeps the film open.</summary>
/// <param name="Id">Name used in config/materials.</param>
/// <param name="Description">What it is, for people.</param>
/// <param name="Mix">Its solvents.</param>
/// <param name="HighestLevelPct">Most of it a shop would use, % by volume of the unretarded mix; the can has the last word.</param>
public sealed record Retarder(string Id, string Description, Mix Mix, double HighestLevelPct);
