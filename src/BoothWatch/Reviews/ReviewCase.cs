using BoothWatch.Air;
using BoothWatch.Film;
using BoothWatch.Jobs;
using BoothWatch.Verdicts;

namespace BoothWatch.Reviews;

/// <summary>A coat with all that its review needs.</summary>
public sealed record ReviewCase
{
    /// <summary>What the coat was.</summary>
    public required CoatDetails Details { get; init; }

    /// <summary>How it came out; null until somebody says.</summary>
    public CoatOutcome? Outcome { get; init; }

    /// <summary>The coat for the model: the shop's ladder with the level of the cup loaded, film, substrate, air speed.</summary>
    public required CoatPlan Plan { get; init; }

    /// <summary>What the shop usually sprays as this kind.</summary>
    public required UsualCoat Usual { get; init; }

    /// <summary>Retarder that was recommended when the coat was begun, %; null when none was.</summary>
    public double? RecommendedRetarderPct { get; init; }

    /// <summary>The air of the day.</summary>
    public required RecordedAir Air { get; init; }

    /// <summary>Station pressure, Pa.</summary>
    public required double PressurePa { get; init; }

    /// <summary>Standard uncertainty of the recorded air.</summary>
    public required AirUncertainty AirUncertainty { get; init; }

    /// <summary>Standard uncertainty of the recorded piece temperature, °C.</summary>
    public required double PieceUncertaintyC { get; init; }

    /// <summary>The shop's limits: the margin wanted beyond the uncertainty, its coverage factor, how warm a piece may be, the unit of words.</summary>
    public required VerdictPolicy Policy { get; init; }

    /// <summary>The shop's time zone: for times in words, and for the day that other starts are looked for in.</summary>
    public required TimeZoneInfo Zone { get; init; }

    /// <summary>When the coat landed, UTC: when its spraying began.</summary>
    public DateTimeOffset Landing => Details.Start;

    /// <summary>Retarder level of the cup, %.</summary>
    public double RetarderPct => Details.Mix.RetarderPct;
}
