namespace BoothWatch.Service.Outputs.Influx;

/// <summary>What the answer to a write means for the points.</summary>
public enum WriteAnswerKind
{
    /// <summary>All points are stored.</summary>
    Accepted,

    /// <summary>At least one of the points is refused and would be refused again.</summary>
    Refused,

    /// <summary>Nothing is wrong with the points: try again later.</summary>
    TryLater,
}
