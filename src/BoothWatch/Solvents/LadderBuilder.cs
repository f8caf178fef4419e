using System.Globalization;

namespace BoothWatch.Solvents;

/// <summary>Makes the mixes of a retarder ladder. Parts and percentages are by volume, and volumes are taken as additive.</summary>
public static class LadderBuilder
{
    /// <summary>Most retarder a ladder may ask for, % by volume of the unretarded mix.</summary>
    public const double HighestLevelPct = 100;

    /// <summary>The ladder used when nobody gives one: 0 to 15 % by 1 %.</summary>
    public static IReadOnlyList<double> DefaultLevelsPct { get; } = [.. Enumerable.Range(0, 16).Select(level => (double)level)];

    /// <summary>Lacquer and thinner by parts.</summary>
    /// <param name="lacquer">The lacquer.</param>
    /// <param name="lacquerParts">Parts of lacquer, positive.</param>
    /// <param name="thinner">The thinner.</param>
    /// <param name="thinnerParts">Parts of thinner, zero or more.</param>
    public static Mix Thin(Lacquer lacquer, double lacquerParts, Thinner thinner, double thinnerParts)
    {
        ArgumentNullException.ThrowIfNull(lacquer);
        ArgumentNullException.ThrowIfNull(thinner);
        return lacquer.Mix.With(lacquerParts, thinner.Mix, thinnerParts);
    }

    /// <summary>One mix a level: the unretarded mix with so many percent of its volume of retarder on top. Level 0 is the mix itself.</summary>
    /// <param name="unretarded">The mix without retarder.</param>
    /// <param name="retarder">The retarder.</param>
    /// <param name="levelsPct">Levels, % by volume of the unretarded mix, rising.</param>
    /// <exception cref="ArgumentException">No level, a level out of range, or levels that do not rise.</exception>
    public static IReadOnlyList<(double RetarderPct, Mix Mix)> Build(Mix unretarded, Retarder retarder, IReadOnlyList<double> levelsPct)
    {
        ArgumentNullException.ThrowIfNull(unretarded);
        ArgumentNullException.ThrowIfNull(retarder);
        ArgumentNullException.ThrowIfNull(levelsPct);
        if (levelsPct.Count == 0)
        {
            throw new ArgumentException("the retarder ladder is empty; give at least one level, for example 0");
        }

        double previous = double.NegativeInfinity;
        List<(double RetarderPct, Mix Mix)> ladder = new(levelsPct.Count);
        foreach (double level in levelsPct)
        {
            if (!(level is >= 0 and <= HighestLevelPct))
            {
                throw new ArgumentException(string.Create(
                    CultureInfo.InvariantCulture, $"retarder level is {level} %; give 0 to {HighestLevelPct} % by volume of the unretarded mix"));
            }

            if (!(level > previous))
            {
                throw new ArgumentException(string.Create(
                    CultureInfo.InvariantCulture, $"retarder level {level} % follows {previous} %; give rising levels, for example 0, 5, 10, 15"));
            }

            previous = level;
            ladder.Add((level, level == 0 ? unretarded : unretarded.With(100, retarder.Mix, level)));
        }

        return ladder;
    }
}
