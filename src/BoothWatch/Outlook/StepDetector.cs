namespace BoothWatch.Outlook;

/// <summary>Finds a step in the humidity ratio of the last hour, minute by minute.</summary>
/// <remarks>
/// The two-sided cumulative sum of Page, Biometrika 41 (1954) 100: S = max(0, S + x - m - k), and the same downward, with the level m of the first
/// minutes; it fires at h. With k at half of the smallest step that matters, a step of 1 g/kg is found within three minutes.
/// </remarks>
public static class StepDetector
{
    /// <summary>Smallest step that matters, kg/kg: about 0.7 °C of dew point at 15 °C. Own choice.</summary>
    public const double LeastStepRatio = 0.0005;

    /// <summary>Minutes that the level is taken from.</summary>
    public const int LevelMinutes = 15;

    private const double Slack = LeastStepRatio / 2;
    private const double FiresAt = 4 * Slack;

    /// <summary>The step: by how much the newest minutes lie beside the first ones, kg/kg; null where none is found or the minutes are too few.</summary>
    /// <param name="ratios">Humidity ratios, a minute each, oldest first, kg/kg.</param>
    public static double? Find(IReadOnlyList<double> ratios)
    {
        ArgumentNullException.ThrowIfNull(ratios);
        if (ratios.Count < LevelMinutes + 2)
        {
            return null;
        }

        double level = ratios.Take(LevelMinutes).Average();
        (double up, double down) = (0, 0);
        foreach (double ratio in ratios.Skip(LevelMinutes))
        {
            up = Math.Max(0, up + ratio - level - Slack);
            down = Math.Max(0, down + level - ratio - Slack);
        }

        return up > FiresAt || down > FiresAt ? ratios.Skip(ratios.Count - 2).Average() - level : null;
    }
}
