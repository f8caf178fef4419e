namespace BoothWatch.Service.Setup;

/// <summary>What became of a change of the configuration file.</summary>
/// <param name="IsWritten">True when the file is a new one.</param>
/// <param name="Refusal">Why the file may not be changed at all, with what to do; null when it may.</param>
/// <param name="IsStale">True when somebody has changed the file since it was looked at.</param>
/// <param name="Errors">What the check of the configuration says of the new text; nothing was written then.</param>
internal sealed record EditOutcome(bool IsWritten, string? Refusal, bool IsStale, IReadOnlyList<string> Errors)
{
    /// <summary>The file is written.</summary>
    public static readonly EditOutcome Written = new(true, null, false, []);

    /// <summary>All values were so already.</summary>
    public static readonly EditOutcome Nothing = new(false, null, false, []);

    /// <summary>The file is not the one that was looked at.</summary>
    public static readonly EditOutcome Changed = new(false, null, true, []);

    /// <summary>The file may not be changed.</summary>
    public static EditOutcome Refused(string why) => new(false, why, false, []);

    /// <summary>The new text is not good.</summary>
    public static EditOutcome Wrong(IReadOnlyList<string> errors) => new(false, null, false, errors);
}
