namespace BoothWatch.Service.Outputs.Series;

/// <summary>Settings of the journal, section <c>series</c> of config/boothwatch.json.</summary>
public sealed class SeriesOptions
{
    /// <summary>Section of the configuration.</summary>
    public const string Section = "series";

    /// <summary>Folder of the journal. Default empty: <c>boothwatch</c> in the per-user state folder, or <c>boothwatch-data</c> here when the user has none.</summary>
    public string Folder { get; set; } = "";

    /// <summary>How long every second's row is kept, days. Default 21, range 1 to 3660.</summary>
    public int RawDays { get; set; } = 21;

    /// <summary>How long rows are kept that are to be shipped to InfluxDB and have not been, days, when longer than <see cref="RawDays"/>. Default 90, range 1 to 3660.</summary>
    public int UnshippedDays { get; set; } = 90;

    /// <summary>How long minute summaries and verdict changes are kept, years. Default 5, range 1 to 100.</summary>
    public int MinuteYears { get; set; } = 5;

    /// <summary>At most this long between forced writes to the disk, seconds; what a power cut may lose. Default 10, range 0 (every row) to 300.</summary>
    public double SyncEveryS { get; set; } = 10;
}
