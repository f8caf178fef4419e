namespace BoothWatch.Service.Outputs.Series;

/// <summary>Where the journal lies. Demo data has its own file, so that it never mixes with what was measured.</summary>
/// <param name="Path">Full path of the database file.</param>
/// <param name="IsDemo">True when any sensor is emulated.</param>
public sealed record JournalLocation(string Path, bool IsDemo)
{
    /// <summary>File name while every sensor is real.</summary>
    public const string FileName = "journal.db";

    /// <summary>File name while any sensor is emulated.</summary>
    public const string DemoFileName = "demo.db";

    /// <summary>The location that the options name.</summary>
    public static JournalLocation Of(SeriesOptions options, bool isDemo) =>
        Of(options, isDemo, Environment.GetFolderPath(
            Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify));

    /// <summary>The location for a given per-user state folder, which may be empty (a system account without a home).</summary>
    public static JournalLocation Of(SeriesOptions options, bool isDemo, string stateFolder)
    {
        string folder = (options.Folder, stateFolder) switch
        {
            ({ Length: > 0 } chosen, _) => chosen,
            (_, { Length: > 0 } state) => System.IO.Path.Combine(state, "boothwatch"),
            _ => "boothwatch-data",
        };
        return new(System.IO.Path.GetFullPath(System.IO.Path.Combine(folder, isDemo ? DemoFileName : FileName)), isDemo);
    }
}
