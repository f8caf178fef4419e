namespace BoothWatch.Service.Outputs.Mqtt;

/// <summary>The journalled verdict changes, wherever they are kept.</summary>
public interface IVerdictChanges
{
    /// <summary>Path of the journal; what has been published is noted in a file beside it.</summary>
    string JournalPath { get; }

    /// <summary>The changes from an id upwards, in order of id.</summary>
    /// <param name="firstId">Lowest id wanted.</param>
    /// <param name="most">Most changes to give.</param>
    IReadOnlyList<VerdictChangeEntry> From(long firstId, int most);

    /// <summary>How many changes come after one, not before a time, and when the first of them was; null when the journal cannot be read.</summary>
    /// <param name="lastId">The change before them.</param>
    /// <param name="from">Only changes from then on, UTC.</param>
    ChangesWaiting? After(long lastId, DateTime from);

    /// <summary>The newest changes, in order of id.</summary>
    /// <param name="most">Most changes to give.</param>
    IReadOnlyList<VerdictChangeEntry> Newest(int most);
}
