namespace BoothWatch.Alerts;

/// <summary>What an alert is about.</summary>
public enum AlertKind
{
    /// <summary>The verdict got worse while spraying is going on.</summary>
    VerdictWorse,

    /// <summary>The blush margin is closing fast while spraying is going on.</summary>
    MarginClosing,

    /// <summary>A sensor that answered does so no more.</summary>
    SensorsLost,

    /// <summary>A wait is over: the next coat, the next round with its sanding, or buffing.</summary>
    TimerDue,

    /// <summary>The piece comes near the dew point, or under it, while its film is soft.</summary>
    SoftFilm,

    /// <summary>A piece that was too cold has become warm enough.</summary>
    PieceWarm,
}
