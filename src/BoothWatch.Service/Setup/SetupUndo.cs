namespace BoothWatch.Service.Setup;

/// <summary>What an undo would change.</summary>
/// <param name="Time">When the earlier version was put aside.</param>
/// <param name="Changes">Each setting that would change, with its values.</param>
public sealed record SetupUndo(DateTimeOffset Time, IReadOnlyList<string> Changes);
