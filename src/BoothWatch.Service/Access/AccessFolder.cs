using BoothWatch.Service.Outputs.Series;

namespace BoothWatch.Service.Access;

/// <summary>Where the hash of the secret and the sessions lie: a folder beside the journal that only its owner may enter.</summary>
/// <param name="Path">Full path; made when the first file is written.</param>
public sealed record AccessFolder(string Path)
{
    private const UnixFileMode OwnerOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    /// <summary>The hash of the shared secret.</summary>
    public string SecretFile => System.IO.Path.Combine(Path, "secret");

    /// <summary>The sessions.</summary>
    public string SessionsFile => System.IO.Path.Combine(Path, "sessions");

    /// <summary>The folder that belongs to a configuration.</summary>
    public static AccessFolder Of(IConfiguration configuration)
    {
        ArgumentNullException.ThrowIfNull(configuration);
        SeriesOptions series = new();
        configuration.GetSection(SeriesOptions.Section).Bind(series);
        string journal = JournalLocation.Of(series, isDemo: false).Path;
        return new AccessFolder(System.IO.Path.Combine(System.IO.Path.GetDirectoryName(journal)!, "access"));
    }

    /// <summary>Writes a file that only the owner may read (mode 600), whole or not at all.</summary>
    /// <exception cref="IOException">The disk is full, or does not work.</exception>
    /// <exception cref="UnauthorizedAccessException">This user may not write there.</exception>
    internal void Write(string path, string text)
    {
        FileStreamOptions create = new() { Mode = FileMode.Create, Access = FileAccess.Write };
        if (OperatingSystem.IsWindows())
        {
            Directory.CreateDirectory(Path);
        }
        else
        {
            Directory.CreateDirectory(Path, OwnerOnly | UnixFileMode.UserExecute);
            create.UnixCreateMode = OwnerOnly;
        }

        string next = path + ".new";
        File.Delete(next);
        using (var file = new FileStream(next, create))
        using (var writer = new StreamWriter(file))
        {
            writer.Write(text);
            writer.Flush();
            file.Flush(flushToDisk: true);
        }

        File.Move(next, path, overwrite: true);
    }
}
