namespace BoothWatch.Outlook;

/// <summary>How the booth follows the air that its fan draws in, learned from the fan's own steps.</summary>
/// <param name="ChangesPerH">Effective air changes, 1/h: the median of the steps.</param>
/// <param name="LeastPerH">The smallest of them.</param>
/// <param name="MostPerH">The largest.</param>
/// <param name="ExcessRatio">Humidity ratio by which the booth stays above the intake, kg/kg: the median.</param>
/// <param name="Steps">Steps it is learned from.</param>
public sealed record RoomModel(double ChangesPerH, double LeastPerH, double MostPerH, double ExcessRatio, int Steps)
{
    /// <summary>Steps needed. Own choice.</summary>
    public const int FewestSteps = 4;

    /// <summary>How far ahead the model is compared with "as it is now", minutes.</summary>
    private const double AheadH = 20 / 60.0;

    /// <summary>
    /// The model; null where fewer than <see cref="FewestSteps"/> can be fitted, or where on those it does no better, beyond chance, than "as it is
    /// now": each step is foretold with what the others teach, twenty minutes ahead from its first minute.
    /// </summary>
    /// <param name="steps">The minutes after each step.</param>
    public static RoomModel? Learn(IEnumerable<IReadOnlyList<RoomPoint>> steps)
    {
        (IReadOnlyList<RoomPoint> Points, RoomFit Fit)[] fits =
        [
            .. steps.Select(points => (points, RoomFit.Of(points))).Where(step => step.Item2 is not null).Select(step => (step.points, step.Item2!)),
        ];
        if (fits.Length < FewestSteps)
        {
            return null;
        }

        List<double> gains = [];
        for (int i = 0; i < fits.Length; i++)
        {
            RoomModel others = OfFits([.. fits.Where((_, other) => other != i).Select(step => step.Fit)]);
            RoomPoint first = fits[i].Points[0];
            RoomPoint later = fits[i].Points.FirstOrDefault(point => point.AtH >= first.AtH + AheadH, fits[i].Points[^1]);
            double foretold = others.RatioAfter(first.BoothRatio, first.IntakeRatio, later.AtH - first.AtH);
            gains.Add(Math.Abs(foretold - later.BoothRatio) - Math.Abs(first.BoothRatio - later.BoothRatio));
        }

        return PairedDifference.Of(gains).Wins ? OfFits([.. fits.Select(step => step.Fit)]) : null;
    }

    /// <summary>Humidity ratio of the booth after a while of the same intake, kg/kg.</summary>
    /// <param name="boothRatio">In the booth now, kg/kg.</param>
    /// <param name="intakeRatio">At the intake, kg/kg.</param>
    /// <param name="hours">How long, h.</param>
    public double RatioAfter(double boothRatio, double intakeRatio, double hours)
    {
        double headingFor = Math.Max(0, intakeRatio + ExcessRatio);
        return headingFor + ((boothRatio - headingFor) * Math.Exp(-ChangesPerH * hours));
    }

    private static RoomModel OfFits(RoomFit[] fits)
    {
        double[] changes = [.. fits.Select(fit => fit.ChangesPerH).Order()];
        double[] excess = [.. fits.Select(fit => fit.ExcessRatio).Order()];
        return new RoomModel(changes[changes.Length / 2], changes[0], changes[^1], excess[excess.Length / 2], fits.Length);
    }
}
