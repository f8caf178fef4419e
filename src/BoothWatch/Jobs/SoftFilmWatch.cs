using BoothWatch.Verdicts;

namespace BoothWatch.Jobs;

/// <summary>
/// The watch over the last coat until its film is hard enough: how far the piece is above the dew point while the shop cools.
/// </summary>
/// <param name="State">How the film fares.</param>
/// <param name="Until">When the film is hard enough, UTC; null while nobody can say, and then the watch goes on.</param>
/// <param name="ClearanceC">Piece less dew point, °C; null when not known.</param>
/// <param name="FallCPerH">How fast that falls, °C/h, over the last hour; negative when it rises; null when not known.</param>
/// <param name="Finding">What was found, with number and unit.</param>
/// <param name="Action">What to do; empty when nothing.</param>
/// <remarks>
/// Set or not, the film is taken to be as cold as the piece: what solvent still leaves chills it little beside the wood below.
/// The clearance is that of <see cref="VerdictPolicy.DewClearanceC"/> (ISO 8502-4:2017), a rule for steel that holds for any surface.
/// </remarks>
public sealed record SoftFilmWatch(
    WatchState State, DateTimeOffset? Until, double? ClearanceC, double? FallCPerH, string Finding, string Action)
{
    private const double LeastFallCPerH = 0.1;
    private static readonly TimeSpan FarthestLook = TimeSpan.FromHours(12);

    /// <summary>The watch of a job now; null when there is nothing to watch: no coat yet, the film is hard, or the job is finished.</summary>
    /// <param name="job">The job.</param>
    /// <param name="until">When the film of the last coat is hard enough, UTC; null while nobody can say.</param>
    /// <param name="now">The present time, UTC.</param>
    /// <param name="pieceC">Temperature of the piece, °C; null when not known.</param>
    /// <param name="dewPointC">Dew point, °C; null when not known.</param>
    /// <param name="clearanceAnHourAgoC">Piece less dew point an hour ago, °C; null when not known.</param>
    /// <param name="wantedClearanceC">Clearance wanted, °C.</param>
    /// <param name="text">How to write temperatures.</param>
    public static SoftFilmWatch? Of(
        Job job, DateTimeOffset? until, DateTimeOffset now, double? pieceC, double? dewPointC, double? clearanceAnHourAgoC, double wantedClearanceC, TemperatureText text)
    {
        ArgumentNullException.ThrowIfNull(job);
        if (!job.IsRunning || job.LastCoat is null || until <= now)
        {
            return null;
        }

        if (pieceC - dewPointC is not { } clearance)
        {
            string missing = dewPointC is null ? "the air is not known" : "the temperature of the piece is not known";
            return new(WatchState.Unknown, until, null, null, missing, "keep the piece warm and look at it");
        }

        double? fall = clearanceAnHourAgoC - clearance;
        WatchState state = clearance <= 0 ? WatchState.Wet : clearance < wantedClearanceC ? WatchState.Close : WatchState.Safe;
        string where = clearance > 0
            ? $"the piece is {text.By(clearance)} above the dew point"
            : $"the piece is {text.By(clearance)} below the dew point: dew on a soft film";
        string action = state switch
        {
            WatchState.Wet => "warm the piece gently and dry the air; do not touch the film",
            WatchState.Close => "keep the piece and the room warm, with no flame or glowing heater near the vapour",
            _ => "",
        };
        return new(state, until, clearance, fall, where + Trend(clearance, fall, wantedClearanceC, text), action);
    }

    // A straight line is no forecast, and says so.
    private static string Trend(double clearance, double? fall, double wanted, TemperatureText text)
    {
        if (fall is not > LeastFallCPerH)
        {
            return "";
        }

        TimeSpan left = TimeSpan.FromHours((clearance - wanted) / fall.Value);
        string when = left > TimeSpan.Zero && left < FarthestLook
            ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"; if that went on, {text.By(wanted)} would be reached in {left.TotalHours:0.0} h")
            : "";
        return $", falling {text.By(fall.Value)} an hour{when}";
    }
}
