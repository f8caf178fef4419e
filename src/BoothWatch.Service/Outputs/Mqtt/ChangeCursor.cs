using System.Globalization;
using System.Text;

namespace BoothWatch.Service.Outputs.Mqtt;

/// <summary>
/// The last verdict change that a broker has taken, kept in a small file beside the journal: its id and time, since ids begin
/// anew with a new journal. The file is replaced whole and forced to the disk.
/// </summary>
internal sealed class ChangeCursor
{
    private readonly string _path;

    /// <summary>Reads the cursor of a journal.</summary>
    public ChangeCursor(string journalPath)
    {
        _path = Path.ChangeExtension(journalPath, ".mqtt-cursor");
        Existed = File.Exists(_path);
        if (!Existed)
        {
            return;
        }

        // A file that cannot be read means that nothing is known, and then all is sent again rather than some lost.
        string[] parts = File.ReadAllText(_path).Split(' ', StringSplitOptions.TrimEntries);
        if (parts.Length == 2
            && long.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out long id)
            && DateTimeOffset.TryParse(parts[1], CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out DateTimeOffset time))
        {
            (Id, Time) = (id, time.UtcDateTime);
        }
    }

    /// <summary>False when nothing was ever published from this journal.</summary>
    public bool Existed { get; private set; }

    /// <summary>Id of the last change taken; 0 when none was.</summary>
    public long Id { get; private set; }

    /// <summary>Its time, UTC.</summary>
    public DateTime Time { get; private set; }

    /// <summary>Moves on in memory only.</summary>
    public void Skip(long id, DateTime time) => (Id, Time) = (id, time);

    /// <summary>Moves on, and keeps that.</summary>
    /// <exception cref="IOException">It could not be kept: after a restart the change may be published again.</exception>
    public void Advance(long id, DateTime time)
    {
        Skip(id, time);
        WholeFile.Replace(_path, file => file.Write(Encoding.UTF8.GetBytes(string.Create(CultureInfo.InvariantCulture, $"{id} {time:yyyy-MM-dd'T'HH:mm:ss.fff'Z'}\n"))));
        Existed = true;
    }
}
