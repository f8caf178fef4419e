namespace BoothWatch.Service.Outputs.Influx;

/// <summary>
/// One table of the journal as the shipper sees it: rows in order, behind a mark that survives restarts. The composition root
/// binds it to the journal, because an output knows no other output.
/// </summary>
public interface IJournalFeed
{
    /// <summary>Measurement that the rows become.</summary>
    string Measurement { get; }

    /// <summary>The rows behind the mark, oldest first.</summary>
    IReadOnlyList<FeedRow> Read(int most);

    /// <summary>The newest row, shipped or not; null when there is none.</summary>
    FeedRow? Newest();

    /// <summary>How far shipping has come.</summary>
    FeedState State();

    /// <summary>Moves the mark behind rows that the server has.</summary>
    void Advance(IReadOnlyList<FeedRow> rows);

    /// <summary>Moves the mark behind a row that the server refuses, and keeps it with the reason and as it was sent.</summary>
    void SetAside(FeedRow row, string reason, string point);
}
