namespace BoothWatch.Service.Setup;

/// <summary>The configuration file.</summary>
/// <param name="Path">Its full path; null when the program runs on built-in defaults.</param>
/// <param name="Version">A mark of its text; a change carries it.</param>
/// <param name="Refusal">Why it cannot be changed here, with what to do; null when it can.</param>
/// <param name="Unlocking">Commands that let it be changed here; empty when it can be, or when that is not what keeps it from being changed.</param>
/// <param name="IsBesideProgram">True when it is the copy beside the program, which an update replaces.</param>
/// <param name="Errors">What is wrong with the file as it stands: the next start would fail.</param>
/// <param name="Undo">What an undo would change; null when there is no earlier version.</param>
public sealed record SetupFile(
    string? Path, string Version, string? Refusal, IReadOnlyList<string> Unlocking, bool IsBesideProgram, IReadOnlyList<string> Errors, SetupUndo? Undo);
