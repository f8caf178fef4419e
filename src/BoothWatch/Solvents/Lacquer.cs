namespace BoothWatch.Solvents;

/// <summary>A lacquer as it comes in the can.</summary>
/// <param name="Id">Name used in config/materials.</param>
/// <param name="Description">What it is, for people.</param>
/// <param name="Mix">Its polymer and solvents.</param>
public sealed record Lacquer(string Id, string Description, Mix Mix);
