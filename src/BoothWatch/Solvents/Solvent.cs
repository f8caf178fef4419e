namespace BoothWatch.Solvents;

/// <summary>One volatile liquid and the properties that the drying film needs.</summary>
/// <param name="Id">Short name used in config/materials, for example <c>n-butyl acetate</c>.</param>
public sealed record Solvent(string Id);
