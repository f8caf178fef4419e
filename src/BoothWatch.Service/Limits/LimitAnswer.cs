using BoothWatch.Limits;

namespace BoothWatch.Service.Limits;

/// <summary>The shop's own limit as JSON. Temperatures are differences in °C; what is not known is null.</summary>
public sealed record LimitAnswer
{
    /// <summary>True when it is switched on.</summary>
    public required bool Enabled { get; init; }

    /// <summary>Required margin in force.</summary>
    public required double InForceC { get; init; }

    /// <summary>Required margin of the settings.</summary>
    public required double ConfiguredC { get; init; }

    /// <summary>Required margin by the shop's coats: what is in force, or would be if it were switched on.</summary>
    public required double? ShopC { get; init; }

    /// <summary>What the coats do to the margin of the settings: <c>none</c>, <c>raised</c>, <c>lowered</c>.</summary>
    public required LimitChange? Change { get; init; }

    /// <summary>Margin below which a coat counts as one that blushes: 0, or more where the limit is raised.</summary>
    public required double? BlushesBelowC { get; init; }

    /// <summary>True while a change waits for the end of the coat being sprayed.</summary>
    public required bool WaitsForCoat { get; init; }

    /// <summary>Why the limit is not known.</summary>
    public required string? Trouble { get; init; }

    /// <summary>The first words, for people.</summary>
    public required string Headline { get; init; }

    /// <summary>The rest in words, a sentence or two each.</summary>
    public required IReadOnlyList<string> Words { get; init; }

    /// <summary>The margin below which a coat of this shop blushes, with its 90 % band.</summary>
    public required CredibleBand? Threshold { get; init; }

    /// <summary>The required margin that the coats speak for, with its 90 % band.</summary>
    public required CredibleBand? NeededMargin { get; init; }

    /// <summary>The limit is never below.</summary>
    public required double FloorC { get; init; }

    /// <summary>The limit is never above.</summary>
    public required double CeilingC { get; init; }

    /// <summary>What must be there before it may move.</summary>
    public required IReadOnlyList<LimitGate> Gates { get; init; }

    /// <summary>Since when coats count, UTC.</summary>
    public required DateTimeOffset? From { get; init; }

    /// <summary>Coats without a marked outcome.</summary>
    public required int NotMarked { get; init; }

    /// <summary>Coats left out as dry spray.</summary>
    public required int DrySpray { get; init; }

    /// <summary>Coats left out because their margin is not known.</summary>
    public required int AirNotKnown { get; init; }

    /// <summary>True in the demo's own journal, where invented coats count.</summary>
    public required bool IsDemo { get; init; }

    /// <summary>The coats that count, newest first.</summary>
    public required IReadOnlyList<LimitAnswerCoat> Coats { get; init; }

    /// <summary>Chance of blushing over the margin, 0 to 1.</summary>
    public required IReadOnlyList<BlushCurvePoint> Curve { get; init; }
}

