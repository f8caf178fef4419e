using System.Diagnostics;

namespace BoothWatch.Service.Tests.Outages;

/// <summary>A file system of two megabytes, in memory, that a test may fill.</summary>
internal sealed class SmallDisk : IDisposable
{
    private const string NeedsRoot = "mounting a small file system needs root on Linux: run the tests as root";

    public SmallDisk() => Run("mount", "-t", "tmpfs", "-o", "size=2m", "tmpfs", Folder);

    /// <summary>Why tests with it are skipped; null when they run.</summary>
    public static string? SkipReason { get; } =
        Environment.GetEnvironmentVariable("CI") == "true" || CanMount() ? null : NeedsRoot;

    public string Folder { get; } = Directory.CreateTempSubdirectory("boothwatch-disk-").FullName;

    private string Filler => Path.Combine(Folder, "filler");

    /// <summary>Leaves not one byte free.</summary>
    public void Fill()
    {
        using FileStream file = new(Filler, FileMode.Create, FileAccess.Write, FileShare.None, bufferSize: 0);
        byte[] block = new byte[512];
        try
        {
            while (true)
            {
                file.Write(block);
            }
        }
        catch (IOException)
        {
            // Full: as wanted.
        }
    }

    public void Free() => File.Delete(Filler);

    public void Dispose()
    {
        Run("umount", "--lazy", Folder);
        Directory.Delete(Folder);
    }

    private static bool CanMount()
    {
        if (!OperatingSystem.IsLinux() || !Environment.IsPrivilegedProcess)
        {
            return false;
        }

        try
        {
            new SmallDisk().Dispose();
            return true;
        }
        catch (InvalidOperationException)
        {
            return false;
        }
    }

    private static void Run(string program, params string[] arguments)
    {
        using Process process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardError = true })!;
        string error = process.StandardError.ReadToEnd();
        process.WaitForExit();
        if (process.ExitCode != 0)
        {
            throw new InvalidOperationException($"{program} failed: {error.Trim()}; {NeedsRoot}");
        }
    }
}
