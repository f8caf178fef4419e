namespace BoothWatch.Service.Records;

/// <summary>How the record of a job looks on paper.</summary>
public sealed class RecordOptions
{
    /// <summary>Section of the configuration.</summary>
    public const string Section = "record";

    /// <summary>Paper of the PDF: <c>A4</c> (default) or <c>Letter</c>.</summary>
    public string Paper { get; set; } = RecordPaper.A4;

    /// <summary>True: the name of the shop stands at the top of the PDF. Default true. It is part of the data either way.</summary>
    public bool ShowShop { get; set; } = true;
}
