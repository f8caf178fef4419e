using System.Runtime.InteropServices;

namespace BoothWatch.Service.Setup;

/// <summary>
/// The configuration file on the disk and its earlier versions beside it: <c>boothwatch.json.1</c> is the newest of them. Whatever ends
/// the program meanwhile, the file itself is the old one or the new one, and whole: it is written aside, forced to the disk, and renamed.
/// </summary>
/// <param name="path">Full path of the file.</param>
internal sealed partial class ConfigurationVersions(string path)
{
    /// <summary>How many earlier versions are kept.</summary>
    public const int Kept = 5;

    /// <summary>Largest file that is edited; a configuration has some 25 kB.</summary>
    public const int LargestBytes = 1 << 20;

    private const int MayWrite = 2;

    /// <summary>Name of the version that the last undo replaced, so that nothing is lost by it.</summary>
    public static string UndonePath(string path) => path + ".undone";

    /// <summary>Why the file may not be edited here, with what to do; null when it may.</summary>
    public string? Refusal
    {
        get
        {
            FileInfo file = new(path);
            return !file.Exists ? $"{path} is gone; put it back, or start BoothWatch with --config and the file that is there"
                : file.LinkTarget is { } target ? $"{path} is a symbolic link to {target}; start BoothWatch with --config and that file"
                : file.Attributes.HasFlag(FileAttributes.Device) ? $"{path} is no ordinary file; give one with --config"
                : file.Length > LargestBytes ? $"{path} has {file.Length} bytes, which is no configuration of BoothWatch"
                : IsLocked ? $"BoothWatch may not write {path} and new files beside it"
                : null;
        }
    }

    /// <summary>Whether it is the rights of this user, or a file system that is read-only for this service, that keep it from being edited.</summary>
    public bool IsLocked => new FileInfo(path).IsReadOnly || !IsWritable(path) || !IsWritable(Path.GetDirectoryName(path)!);

    /// <summary>Reads the file.</summary>
    /// <exception cref="IOException">It cannot be read.</exception>
    public byte[] Read() => File.ReadAllBytes(path);

    /// <summary>The newest earlier version that differs from the present one, and when it was put aside; null when there is none.</summary>
    public (int Number, byte[] Text, DateTimeOffset Time)? Previous(ReadOnlySpan<byte> present)
    {
        for (int number = 1; number <= Kept; number++)
        {
            if (File.Exists(Numbered(number)) && File.ReadAllBytes(Numbered(number)) is { } text && !present.SequenceEqual(text))
            {
                return (number, text, File.GetLastWriteTimeUtc(Numbered(number)));
            }
        }

        return null;
    }

    /// <summary>Replaces the file, and keeps the present one as the newest earlier version.</summary>
    /// <exception cref="IOException">The disk refuses; the file is as it was.</exception>
    /// <exception cref="UnauthorizedAccessException">This user may not write there; the file is as it was.</exception>
    public void Replace(byte[] text)
    {
        string kept = WriteAside(Read());
        string? aside = null;
        try
        {
            aside = WriteAside(text);
            for (int number = Kept; number > 1; number--)
            {
                if (File.Exists(Numbered(number - 1)))
                {
                    File.Move(Numbered(number - 1), Numbered(number), overwrite: true);
                }
            }

            File.Move(kept, Numbered(1), overwrite: true);
            File.Move(aside, path, overwrite: true);
        }
        catch
        {
            File.Delete(kept);
            File.Delete(aside ?? kept);
            throw;
        }
    }

    /// <summary>Puts an earlier version in the place of the file; the versions before it move up, and the present one stays as <see cref="UndonePath"/>.</summary>
    /// <param name="number">The version, as <see cref="Previous"/> gave it.</param>
    /// <param name="text">Its text.</param>
    /// <exception cref="IOException">The disk refuses; the file is as it was, or as it was before.</exception>
    /// <exception cref="UnauthorizedAccessException">This user may not write there; the file is as it was.</exception>
    public void Restore(int number, byte[] text)
    {
        string aside = WriteAside(text);
        File.Move(WriteAside(Read()), UndonePath(path), overwrite: true);
        File.Move(aside, path, overwrite: true);
        for (int used = 1; used <= Kept; used++)
        {
            string from = Numbered(used + number);
            if (used + number <= Kept && File.Exists(from))
            {
                File.Move(from, Numbered(used), overwrite: true);
            }
            else
            {
                File.Delete(Numbered(used));
            }
        }
    }

    private string Numbered(int number) => FormattableString.Invariant($"{path}.{number}");

    // A new file beside the old one, with its mode, and on the disk before anything is renamed to it.
    private string WriteAside(byte[] text)
    {
        string aside = $"{path}.{Path.GetRandomFileName()}";
        FileStreamOptions options = new() { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        UnixFileMode? mode = OperatingSystem.IsWindows() ? null : File.GetUnixFileMode(path);
        if (mode is not null && !OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        }

        try
        {
            using FileStream stream = new(aside, options);
            stream.Write(text);
            if (mode is { } kept && !OperatingSystem.IsWindows())
            {
                File.SetUnixFileMode(stream.SafeFileHandle, kept);
            }

            stream.Flush(flushToDisk: true);
        }
        catch
        {
            File.Delete(aside);
            throw;
        }

        return aside;
    }

    // Asks the kernel, which knows of owners, groups and file systems that are mounted read-only for this service.
    private static bool IsWritable(string place) => OperatingSystem.IsWindows() || Access(place, MayWrite) == 0;

    [LibraryImport("libc", EntryPoint = "access", StringMarshalling = StringMarshalling.Utf8)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int Access(string path, int mode);
}
