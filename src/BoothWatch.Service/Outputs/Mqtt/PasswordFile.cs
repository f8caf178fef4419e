namespace BoothWatch.Service.Outputs.Mqtt;

/// <summary>A password kept in a file of its own, so that the configuration can be shown to anyone.</summary>
internal static class PasswordFile
{
    /// <summary>The first line of the file; empty when no file is named.</summary>
    public static string Read(string path) => path.Length == 0 ? "" : File.ReadLines(path).FirstOrDefault() ?? "";
}
