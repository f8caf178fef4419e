namespace BoothWatch.Service.Setup;

/// <summary>A step of the checklist.</summary>
/// <param name="Id">sensors, booth, materials, light or alerts.</param>
/// <param name="Done">True when nothing is left to do.</param>
/// <param name="State">How it stands, for people.</param>
public sealed record SetupStep(string Id, bool Done, string State);
