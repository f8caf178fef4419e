namespace BoothWatch.Service.Records;

/// <summary>The papers that a record can be printed on.</summary>
public static class RecordPaper
{
    /// <summary>210 mm by 297 mm (ISO 216).</summary>
    public const string A4 = "A4";

    /// <summary>8.5 inch by 11 inch.</summary>
    public const string Letter = "Letter";

    /// <summary>The paper of a name in any case; null when it is none.</summary>
    public static string? Find(string? name) =>
        string.Equals(name, A4, StringComparison.OrdinalIgnoreCase) ? A4
        : string.Equals(name, Letter, StringComparison.OrdinalIgnoreCase) ? Letter
        : null;
}
