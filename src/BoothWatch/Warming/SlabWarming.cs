using BoothWatch.Air;
using BoothWatch.Film;

namespace BoothWatch.Warming;

/// <summary>How long a cold body takes until its surface is warm, by conduction into it: for a piece of which no trail is known yet.</summary>
public static class SlabWarming
{
    /// <summary>Longest time that is looked at, s: nobody waits for longer.</summary>
    public const double LongestS = 12 * 3600;

    /// <summary>Length along the air stream of an ordinary piece, m. Own choice: a door, a body, a table top.</summary>
    public const double LengthM = 0.3;

    /// <summary>The same of one that warms soonest, m: a leg, a neck, a rim.</summary>
    public const double ShortestLengthM = 0.1;

    /// <summary>The same of one that warms last, m, which is taken to stand in still air too.</summary>
    public const double GreatestLengthM = 0.5;

    /// <summary>The time until the surface is as warm as wanted, with the range that shape and draught leave open.</summary>
    /// <param name="body">The piece, its whole thickness, both faces in the air.</param>
    /// <param name="air">The air, which is taken to stay as it is.</param>
    /// <param name="airSpeedMPerS">Air speed over the piece, m/s.</param>
    /// <param name="pieceC">Its temperature, °C, taken to be the same throughout.</param>
    /// <param name="uncertaintyC">Standard uncertainty of that, °C.</param>
    /// <param name="targetC">Temperature to reach, °C.</param>
    /// <returns>Null where it is not reached within <see cref="LongestS"/>, and always where the air is no warmer than that.</returns>
    public static WarmingTime? Until(Substrate body, MoistAir air, double airSpeedMPerS, double pieceC, double uncertaintyC, double targetC)
    {
        if (Surface(body, air, airSpeedMPerS, LengthM, pieceC, targetC) is not { } middle)
        {
            return null;
        }

        double? least = Surface(body, air, airSpeedMPerS, ShortestLengthM, pieceC + uncertaintyC, targetC)?.AfterS;
        double? most = Surface(body, air, 0, GreatestLengthM, pieceC - uncertaintyC, targetC)?.AfterS;
        return new WarmingTime(middle.AfterS, Math.Min(least ?? middle.AfterS, middle.AfterS), most is { } longest ? Math.Max(longest, middle.AfterS) : null);
    }

    /// <summary>When the surface is as warm as wanted, and how cold the middle is then.</summary>
    /// <returns>Null where it is not reached within <see cref="LongestS"/>.</returns>
    internal static (double AfterS, double CoreC, double DewGPerM2)? Surface(
        Substrate body, MoistAir air, double airSpeedMPerS, double lengthM, double startC, double targetC)
    {
        if (startC >= targetC)
        {
            return (0, startC, 0);
        }

        if (!(targetC < air.TemperatureC))
        {
            return null;
        }

        var run = SlabRun.In(body, air, airSpeedMPerS, lengthM, startC);
        while (run.TimeS < LongestS)
        {
            (double beforeS, double beforeC, double beforeCoreC) = (run.TimeS, run.SurfaceC, run.CoreC);
            run.Step(LongestS);
            if (run.SurfaceC >= targetC)
            {
                double share = (targetC - beforeC) / (run.SurfaceC - beforeC);
                return (beforeS + (share * (run.TimeS - beforeS)), beforeCoreC + (share * (run.CoreC - beforeCoreC)), run.DewGPerM2);
            }
        }

        return null;
    }
}
