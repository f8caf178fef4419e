namespace BoothWatch.Service.Page;

/// <summary>How one output fares, in figures. Counts run since the start of the service.</summary>
public sealed record OutputStatus
{
    /// <summary>Its name, for example <c>series</c>.</summary>
    public required string Name { get; init; }

    /// <summary>False while its last attempt failed.</summary>
    public required bool Working { get; init; }

    /// <summary>What it handled or shipped.</summary>
    public long Handled { get; init; }

    /// <summary>What was lost to it.</summary>
    public long Dropped { get; init; }

    /// <summary>Live states that a newer one overtook before they were published, where only the newest counts; no loss.</summary>
    public long Superseded { get; init; }

    /// <summary>What the receiver refused for good; kept in the journal with the reason.</summary>
    public long SetAside { get; init; }

    /// <summary>Failed attempts.</summary>
    public long Failures { get; init; }

    /// <summary>What waits now.</summary>
    public long Backlog { get; init; }

    /// <summary>Age of the oldest of what waits, s; null when nothing waits.</summary>
    public double? BacklogAgeS { get; init; }

    /// <summary>Time of the last success, UTC (RFC 3339); null when there was none.</summary>
    public DateTime? LastSuccess { get; init; }

    /// <summary>The last error in words; null when there was none. Stays after recovery.</summary>
    public string? LastError { get; init; }

    /// <summary>Time of the last error, UTC (RFC 3339); null when there was none.</summary>
    public DateTime? LastErrorTime { get; init; }
}
