namespace BoothWatch.Service;

/// <summary>Puts a file in the place of another so that a kill or a power cut leaves the old one or the new one, and whole.</summary>
internal static class WholeFile
{
    /// <summary>Writes aside, forces it to the disk, and renames. What fails leaves the old file and nothing beside it.</summary>
    /// <param name="path">The file; its folder must be there.</param>
    /// <param name="write">Writes the content.</param>
    /// <param name="mode">Mode of the file; null: what the system gives a new one. Without meaning on Windows.</param>
    /// <exception cref="IOException">The disk refuses.</exception>
    /// <exception cref="UnauthorizedAccessException">This user may not write there.</exception>
    public static void Replace(string path, Action<Stream> write, UnixFileMode? mode = null)
    {
        string aside = $"{path}.{Path.GetRandomFileName()}";
        try
        {
            using (FileStream stream = new(aside, FileMode.CreateNew, FileAccess.Write))
            {
                write(stream);
                if (mode is { } own && !OperatingSystem.IsWindows())
                {
                    File.SetUnixFileMode(stream.SafeFileHandle, own);
                }

                stream.Flush(flushToDisk: true);
            }

            File.Move(aside, path, overwrite: true);
        }
        catch
        {
            File.Delete(aside);
            throw;
        }
    }
}
