using BoothWatch.Outlook;

namespace BoothWatch.Service.Outlook;

/// <summary>The latest outlook and what it was made of.</summary>
public sealed record OutlookState
{
    /// <summary>When it was made; null before the first.</summary>
    public OutlookTime? At { get; init; }

    /// <summary>The outlook for the coat in hand.</summary>
    public DayOutlook Outlook { get; init; } = DayOutlook.SilentFor(OutlookSilence.NotYet);

    /// <summary>Retarder level that it is for, %.</summary>
    public double RetarderPct { get; init; }

    /// <summary>True when that level is in the cup; false when none is mixed and it is the highest that does not slow down.</summary>
    public bool IsLoaded { get; init; }

    /// <summary>The outlook for more retarder than is in the cup, as far as that does not slow down; null where there is no more.</summary>
    public DayOutlook? WithMore { get; init; }

    /// <summary>Retarder level that <see cref="WithMore"/> is for, %.</summary>
    public double MoreRetarderPct { get; init; }

    /// <summary>How the booth follows its intake; null where that is not learned.</summary>
    public RoomModel? Room { get; init; }

    /// <summary>A step of the air in the last hour; null where there is none.</summary>
    public AirStep? Step { get; init; }

    /// <summary>True where the earlier days are invented.</summary>
    public bool IsInvented { get; init; }

    /// <summary>Why the record cannot be read, or what failed.</summary>
    public string? Trouble { get; init; }

    /// <summary>What the verdict waits for, where that silences the outlook.</summary>
    public string? Barrier { get; init; }

    /// <summary>What it took to work out, ms.</summary>
    public double TookMs { get; init; }
}
