namespace BoothWatch.Verdicts;

/// <summary>Is the piece warm enough not to draw dew, and if not, when? Times are those of the air as it is now.</summary>
public sealed record PieceWarming
{
    /// <summary>A piece that has become warm is news for so long, s: 15 min. Own choice.</summary>
    public const double NewsForS = 15 * 60;

    /// <summary>How it stands.</summary>
    public required WarmingState State { get; init; }

    /// <summary>The least temperature at which the piece passes its rules in this air, °C.</summary>
    public required double TargetC { get; init; }

    /// <summary>Which rule that temperature comes from.</summary>
    public required WarmingTarget TargetFrom { get; init; }

    /// <summary>Height of the piece over the dew point, °C; below 0 dew falls on it.</summary>
    public required double ClearanceC { get; init; }

    /// <summary>Time until it is warm enough, s; null unless it is warming.</summary>
    public double? LeftS { get; init; }

    /// <summary>The least that is likely, s; null unless it is warming.</summary>
    public double? LeastS { get; init; }

    /// <summary>The most that is likely, s; null unless it is warming, or where no end can be named.</summary>
    public double? MostS { get; init; }

    /// <summary>What the times rest on; null without times.</summary>
    public WarmingBasis? Basis { get; init; }

    /// <summary>How much colder the middle of the piece still is when its surface is warm enough, by the model, °C; null where it was not asked.</summary>
    public double? CoreColderC { get; init; }

    /// <summary>Time since it was last too cold, s; null unless it is warm and was seen to be colder.</summary>
    public double? WarmSinceS { get; init; }
}
