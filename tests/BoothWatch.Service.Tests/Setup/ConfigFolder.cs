namespace BoothWatch.Service.Tests.Setup;

/// <summary>A copy of the shipped configuration in a folder of its own.</summary>
public sealed class ConfigFolder : IDisposable
{
    public ConfigFolder() => File.Copy(Path.Combine(RepositoryFile.Root, "config/boothwatch.json"), JsonPath);

    public string Folder { get; } = Directory.CreateTempSubdirectory("boothwatch-setup-").FullName;

    public string JsonPath => Path.Combine(Folder, "boothwatch.json");

    public string Text => File.ReadAllText(JsonPath);

    public string[] Names => [.. Directory.GetFiles(Folder).Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal)];

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
