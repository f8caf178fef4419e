namespace BoothWatch.Verdicts;

/// <summary>Says when a piece is warm, always with the range and never more finely than is known.</summary>
public static class WarmingText
{
    /// <summary>The time with its range, for example <c>about 40 min (25 min to 1 h)</c>; empty where there is none.</summary>
    public static string Time(PieceWarming? warming)
    {
        if (warming is not { LeftS: double leftS, LeastS: double leastS })
        {
            return "";
        }

        string left = RoughTime.Of(leftS);
        string range = Range(leastS, warming.MostS);
        return (RoughTime.Minutes(leftS) < 1 ? left : $"about {left}") + (range.Length == 0 ? "" : $" ({range})");
    }

    /// <summary>The range alone, for example <c>30 to 50 min</c> or <c>30 min to 1 h</c>; empty where it is no wider than the rounding.</summary>
    public static string Range(double leastS, double? mostS)
    {
        string least = RoughTime.Of(leastS);
        int minutes = RoughTime.Minutes(leastS);
        return mostS is not { } most ? $"{least} or more"
            : RoughTime.Of(most) == least ? ""
            : minutes >= 1 && RoughTime.Minutes(most) < 60 ? $"{minutes} to {RoughTime.Of(most)}"
            : $"{least} to {RoughTime.Of(most)}";
    }

    /// <summary>True when the time is over although the value, typed in long ago, still says cold: only another measurement helps.</summary>
    public static bool IsOverdue(PieceWarming? warming) => warming is { State: WarmingState.Warming, Basis: WarmingBasis.Model, LeftS: <= 0 };

    /// <summary>What follows upon "warm the piece to so much", with the comma before it; empty where there is nothing to say.</summary>
    internal static string After(PieceWarming? warming) => warming?.State switch
    {
        WarmingState.Warming when IsOverdue(warming) => ", which by the model it may have by now: measure it again",
        WarmingState.Warming => $", in this air {Time(warming)}",
        WarmingState.AirTooCold => ", which this air is not warm enough for",
        WarmingState.NotWarming => ", it is not warming now",
        _ => "",
    };
}
