namespace BoothWatch.Reviews;

/// <summary>What can take a coat towards blush.</summary>
public enum ReviewCauseKind
{
    /// <summary>The dew point rose while the film was open.</summary>
    AirGrewWetter,

    /// <summary>The air cooled while the film was open.</summary>
    BoothCooled,

    /// <summary>The air was too wet from the start: no level of the ladder carries even a usual coat.</summary>
    AirTooWet,

    /// <summary>The air was too wet for the retarder in the cup; another level carries a usual coat, if only just.</summary>
    TooLittleRetarder,

    /// <summary>The piece was colder than the air.</summary>
    ColdPiece,

    /// <summary>The film was heavier than usual.</summary>
    HeavyFilm,

    /// <summary>The cup evaporates faster than the usual one.</summary>
    FastCup,

    /// <summary>The air passed faster than usual.</summary>
    Draught,

    /// <summary>Warm air carries more water at the same humidity and makes the solvents leave faster.</summary>
    HotAir,

    /// <summary>Nothing was out of the usual: the coat was simply near its limit.</summary>
    NearTheLimit,
}
