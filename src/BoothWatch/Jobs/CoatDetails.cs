using BoothWatch.Film;

namespace BoothWatch.Jobs;

/// <summary>What one coat was: all that a finisher can mark and correct.</summary>
public sealed record CoatDetails
{
    /// <summary>Kind of coat.</summary>
    public required CoatKind Kind { get; init; }

    /// <summary>What was in the cup.</summary>
    public required CoatMix Mix { get; init; }

    /// <summary>Wet film thickness as it landed, µm.</summary>
    public required double WetFilmUm { get; init; }

    /// <summary>What the film lies on, an id of config/materials.</summary>
    public required string Substrate { get; init; }

    /// <summary>Air speed over the piece, m/s.</summary>
    public required double AirSpeedMPerS { get; init; }

    /// <summary>When spraying began, UTC.</summary>
    public required DateTimeOffset Start { get; init; }

    /// <summary>When spraying ended, UTC; null while it goes on, or when nobody marked it.</summary>
    public DateTimeOffset? Stop { get; init; }
}
