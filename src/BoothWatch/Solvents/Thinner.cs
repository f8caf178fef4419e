namespace BoothWatch.Solvents;

/// <summary>A thinner: solvents only.</summary>
/// <param name="Id">Name used in config/materials.</param>
/// <param name="Description">What it is, for people.</param>
/// <param name="Mix">Its solvents.</param>
public sealed record Thinner(string Id, string Description, Mix Mix);
