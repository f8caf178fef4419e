using BoothWatch.Service.Outputs.Series;

namespace BoothWatch.Service.Commands;

/// <summary>
/// The right to run: one BoothWatch for each folder of readings. A second one would write its own verdicts into the
/// journal of the first and take its pins. Held as a locked file, which the kernel lets go when the process ends in any way.
/// </summary>
internal sealed class RunClaim : IDisposable
{
    /// <summary>Name of the locked file. It stays when the program ends and says nothing by itself.</summary>
    public const string FileName = "boothwatch.lock";

    // What a lock held by another raises as HResult: EAGAIN of Linux, of macOS and BSD, and the sharing violation of Windows.
    private static readonly int[] HeldByAnother = [11, 35, unchecked((int)0x80070020)];

    private readonly FileStream? _file;

    private RunClaim(FileStream? file, string? refusal = null, string? doubt = null) => (_file, Refusal, Doubt) = (file, refusal, doubt);

    /// <summary>Why this program may not run, with the fix; null when it may.</summary>
    public string? Refusal { get; }

    /// <summary>Why it could not be found out (a full or read-only disk); the booth runs all the same, as its light does without a journal. Null when it could.</summary>
    public string? Doubt { get; }

    /// <summary>Claims a folder for the life of this process, or until disposed.</summary>
    /// <param name="folder">The folder of the journal; created when it is missing.</param>
    public static RunClaim Take(string folder)
    {
        try
        {
            Directory.CreateDirectory(folder);
            return new RunClaim(new FileStream(Path.Combine(folder, FileName), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None));
        }
        catch (IOException held) when (HeldByAnother.Contains(held.HResult))
        {
            return new RunClaim(null, refusal:
                $"another BoothWatch already runs with the folder {folder}; stop it first, or give this one its own {SeriesOptions.Section}:folder (and its own page:url and pins)");
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            return new RunClaim(null, doubt: problem.Message);
        }
    }

    /// <summary>Gives the claim up.</summary>
    public void Dispose() => _file?.Dispose();
}
