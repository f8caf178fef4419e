using System.Globalization;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Page;

/// <summary>Says of a piece that was brought in cold how long it takes to warm, on what that rests, and where it should wait meanwhile.</summary>
/// <param name="warming">How it stands; null when that is not known.</param>
/// <param name="text">How to write temperatures.</param>
/// <param name="isTyped">True where a person measures it and types the value in.</param>
internal sealed class PieceText(PieceWarming? warming, DegreeText text, bool isTyped)
{
    /// <summary>It must have been warm for so long, s, before anybody is told: one reading may be wrong.</summary>
    private const double SureAfterS = 10;

    /// <summary>A middle that is colder by less than this is not worth a word, °C.</summary>
    private const double ColdMiddleC = 1;

    private bool IsJustWarm => warming is { State: WarmingState.Warm, WarmSinceS: >= SureAfterS and <= PieceWarming.NewsForS };

    private bool IsOverdue => isTyped && WarmingText.IsOverdue(warming);

    private bool IsTooCold => warming is { State: not WarmingState.Warm };

    /// <summary>The state as a key, for example <c>not-warming</c>; empty when there is nothing to show.</summary>
    public string Key => IsTooCold || IsJustWarm ? PageJson.Word(warming!.State) : "";

    /// <summary>The time alone, to be read from afar; empty when there is nothing to show.</summary>
    public string Mark => warming switch
    {
        { State: WarmingState.Warming } when IsOverdue => "Measure again",
        { State: WarmingState.Warming, LeftS: double leftS } => DegreeText.Tie(RoughTime.Of(leftS)),
        { State: WarmingState.NotWarming } => "Not warming",
        { State: WarmingState.AirTooCold } => "Air too cold",
        { State: WarmingState.Unknown } => "Too cold",
        _ => IsJustWarm ? "Warm" : "",
    };

    /// <summary>For who hears the page: a few words that change with the state alone, so that the minutes do not chatter.</summary>
    public string Heard => IsJustWarm ? "The piece is warm enough now." : IsTooCold && warming!.State != WarmingState.Unknown ? "The piece is too cold." : "";

    /// <summary>How far the piece is from the dew point.</summary>
    public string Clearance => warming is null ? "surface"
        : warming.ClearanceC >= 0 ? $"{Size(warming.ClearanceC)} over the dew point"
        : $"{Size(warming.ClearanceC)} under the dew point";

    /// <summary>What the time means.</summary>
    /// <param name="now">The time of day that the shop goes by.</param>
    public string Meaning(TimeSpan now)
    {
        if (Key.Length == 0)
        {
            return "";
        }

        string target = text.AtLeast(warming!.TargetC);
        return warming.State switch
        {
            WarmingState.Warming when IsOverdue => $"by the model it may have {target} by now, and the value typed in is too old to tell",
            WarmingState.Warming => $"until it has {target}, at about {Clock(now, warming.LeftS!.Value)}{Range()}, if the air stays as it is",
            WarmingState.NotWarming => $"it must have {target} and has not warmed in the last minutes, though the air is warmer: is the sensor on the piece, and does air get to it?",
            WarmingState.AirTooCold => $"it must have {target}, and this air is no warmer than that: waiting here does not warm it",
            WarmingState.Unknown => $"it must have {target}; nobody can say yet when",
            _ => $"the piece is warm enough, {Clearance}",
        };
    }

    /// <summary>Where it should wait, and what to see to; empty when it is not too cold.</summary>
    public string Care
    {
        get
        {
            if (!IsTooCold)
            {
                return "";
            }

            string dew = warming!.ClearanceC < 0 ? "Dew is falling on it: wipe it off and let it dry. " : "";
            if (warming.State == WarmingState.AirTooCold)
            {
                return $"{dew}Warm the shop first, or wait for drier air; no flame and no heater near vapour.";
            }

            string middle = warming.CoreColderC >= ColdMiddleC
                ? $" Its middle will still be about {Size(warming.CoreColderC.Value)} colder then and cools the film: hold a dry cloth on a spot for two minutes and measure under it."
                : "";
            return $"{dew}Let it lie level on blocks in the air of the shop, air on both faces; not beside a heater or a flame, not in the sun.{middle}";
        }
    }

    /// <summary>What the time rests on; empty without one.</summary>
    public string Basis => warming?.Basis switch
    {
        null => "",
        WarmingBasis.Measured => "By how it has warmed in the last minutes.",
        _ when IsOverdue => "By the model, from the value typed in.",
        _ when isTyped => "By the model, from the value typed in: measure again then.",
        _ => "By the model, until it has been watched for long enough.",
    };

    private string Size(double differenceC) => text.Difference(Math.Abs(differenceC)).TrimStart('+');

    private string Range()
    {
        string range = WarmingText.Range(warming!.LeastS!.Value, warming.MostS);
        return range.Length == 0 ? "" : $" ({DegreeText.Tie(range)})";
    }

    // Five minutes are as fine as this is known, unless it is soon.
    private static string Clock(TimeSpan now, double leftS)
    {
        double minutes = (now + TimeSpan.FromSeconds(leftS)).TotalMinutes;
        double step = leftS < 600 ? 1 : 5;
        int whole = (int)(Math.Round(minutes / step) * step) % (24 * 60);
        return string.Create(CultureInfo.InvariantCulture, $"{whole / 60}:{whole % 60:00}");
    }
}
