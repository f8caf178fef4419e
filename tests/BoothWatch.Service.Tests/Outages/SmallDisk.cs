using System.Diagnostics;

namespace BoothWatch.Service.Tests.Outages;

/// <summary>
/// A small file system that a test may fill: two megabytes in memory where mounting is allowed, else the shared memory of a
/// container, which is small as well.
/// </summary>
internal sealed class SmallDisk : IDisposable
{
    private const string SharedMemory = "/dev/shm";
    private const long SmallBytes = 128 << 20;
    private const string Needs = "a small file system to fill needs leave to mount one (run the tests as root on Linux)";
    private readonly bool _mounted;

    public SmallDisk()
    {
        string folder = Directory.CreateTempSubdirectory("boothwatch-disk-").FullName;
        string? error = Mount(folder);
        _mounted = error is null;
        if (!_mounted)
        {
            Directory.Delete(folder);
            folder = SharedMemoryIsSmall()
                ? Directory.CreateDirectory(Path.Combine(SharedMemory, Path.GetFileName(folder))).FullName
                : throw new InvalidOperationException($"{Needs}: {error}");
        }

        Folder = folder;
    }

    /// <summary>Why tests with it are skipped; null when they run.</summary>
    public static string? SkipReason { get; } = Environment.GetEnvironmentVariable("CI") == "true" || IsToBeHad() ? null : Needs;

    public string Folder { get; }

    private string Filler => Path.Combine(Folder, "filler");

    /// <summary>Leaves not one block free.</summary>
    public void Fill()
    {
        using FileStream file = new(Filler, FileMode.Create, FileAccess.Write, FileShare.None, bufferSize: 0);
        try
        {
            foreach (int size in (int[])[1 << 20, 4096, 512])
            {
                WriteUntilFull(file, new byte[size]);
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
        if (_mounted)
        {
            Run("umount", "--lazy", Folder);
        }

        Directory.Delete(Folder, recursive: true);
    }

    private static void WriteUntilFull(FileStream file, byte[] block)
    {
        try
        {
            while (true)
            {
                file.Write(block);
            }
        }
        catch (IOException) when (block.Length > 512)
        {
            // Smaller blocks may still fit.
        }
    }

    private static bool IsToBeHad()
    {
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

    private static bool SharedMemoryIsSmall() =>
        Directory.Exists(SharedMemory) && new DriveInfo(SharedMemory) is { IsReady: true, TotalSize: <= SmallBytes };

    private static string? Mount(string folder) => OperatingSystem.IsLinux() && Environment.IsPrivilegedProcess
        ? Run("mount", "-t", "tmpfs", "-o", "size=2m", "tmpfs", folder)
        : "not root";

    private static string? Run(string program, params string[] arguments)
    {
        using Process process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardError = true })!;
        string error = process.StandardError.ReadToEnd();
        process.WaitForExit();
        return process.ExitCode == 0 ? null : error.Trim();
    }
}
