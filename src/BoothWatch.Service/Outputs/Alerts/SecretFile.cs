namespace BoothWatch.Service.Outputs.Alerts;

/// <summary>A secret kept in a file of its own, so that the configuration can be shown to anyone.</summary>
internal static class SecretFile
{
    private const UnixFileMode Foreign = UnixFileMode.GroupWrite | UnixFileMode.OtherRead | UnixFileMode.OtherWrite;

    /// <summary>The first line of the file, or what stands in the configuration where no file is named.</summary>
    public static string Read(string path, string otherwise) => path.Length == 0 ? otherwise : File.ReadLines(path).FirstOrDefault() ?? "";

    /// <summary>Adds what is wrong with a file of a secret.</summary>
    /// <param name="errors">Where to add it.</param>
    /// <param name="key">Full key of the setting that names the file.</param>
    /// <param name="path">The file; empty for none.</param>
    /// <param name="example">An example path.</param>
    /// <returns>False when it cannot be read.</returns>
    public static bool Check(List<string> errors, string key, string path, string example)
    {
        if (path.Length == 0)
        {
            return true;
        }

        try
        {
            using FileStream file = File.OpenRead(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            errors.Add($"{key} is \"{path}\", which this user cannot read; give a file with the secret in its first line, for example {example}");
            return false;
        }

        if (!OperatingSystem.IsWindows() && (File.GetUnixFileMode(path) & Foreign) is not UnixFileMode.None and var mode)
        {
            errors.Add($"{key} is \"{path}\", which others may read or write ({mode}); allow its owner and group alone: chmod 640 {path}");
        }

        return true;
    }
}
