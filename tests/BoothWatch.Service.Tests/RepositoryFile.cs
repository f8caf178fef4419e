namespace BoothWatch.Service.Tests;

/// <summary>Finds files of the repository from the folder of the tests.</summary>
internal static class RepositoryFile
{
    public static string Root { get; } = FindRoot();

    public static string Read(string relativePath) => File.ReadAllText(Path.Combine(Root, relativePath));

    private static string FindRoot()
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "BoothWatch.sln")))
            {
                return folder.FullName;
            }
        }

        throw new InvalidOperationException($"BoothWatch.sln is in no folder above {AppContext.BaseDirectory}");
    }
}
