namespace BoothWatch.Reviews;

/// <summary>What could have been done otherwise.</summary>
public enum ReviewRemedyKind
{
    /// <summary>Another retarder level.</summary>
    Retarder,

    /// <summary>A thinner wet film.</summary>
    ThinnerFilm,

    /// <summary>A warmer piece.</summary>
    WarmerPiece,

    /// <summary>Waiting.</summary>
    Later,

    /// <summary>Spraying earlier that day.</summary>
    Earlier,
}
