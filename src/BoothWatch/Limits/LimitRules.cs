using BoothWatch.Film;

namespace BoothWatch.Limits;

/// <summary>How the shop's own limit is found. docs/limit.md gives the reasons and the sources.</summary>
public sealed record LimitRules
{
    /// <summary>Required margin of the settings, °C: it holds until the evidence speaks against it.</summary>
    public double ConfiguredMarginC { get; init; } = 0.5;

    /// <summary>Factor from the standard to the expanded uncertainty, as in the verdict; the chance of blushing at the limit is that of the
    /// normal distribution beyond it: 5 % for 1.65.</summary>
    public double CoverageFactor { get; init; } = 1.65;

    /// <summary>Standard uncertainty of the model, °C; one shop's coats share it.</summary>
    public double ModelUncertaintyC { get; init; } = FilmParameters.Default.ModelUncertaintyC;

    /// <summary>The limit is never below this, °C.</summary>
    public double FloorC { get; init; } = 0.2;

    /// <summary>The limit is never above this, °C.</summary>
    public double CeilingC { get; init; } = 3;

    /// <summary>It falls only with so many coats that did not blush.</summary>
    public int LeastCoats { get; init; } = 20;

    /// <summary>It falls only with close coats that did not blush on so many days. Close: with less margin than the settings want.</summary>
    public int LeastCloseDays { get; init; } = 5;

    /// <summary>It falls only when so many of all coats, %, were marked as not blushed: who marks only some may mark the good ones.</summary>
    public double LeastJudgedPct { get; init; } = 50;

    /// <summary>It rises only with so many coats that blushed though the model said that they would not.</summary>
    public int LeastBlushed { get; init; } = 2;

    /// <summary>Standard deviation of the prior of the threshold, °C: 0.8 of the model and 0.6 for what else a shop's coats share
    /// (calibration and place of the sensors). Own choice. The mean is 0: the model is right.</summary>
    public double PriorSdC { get; init; } = 1;

    /// <summary>Scatter from coat to coat beyond the uncertainty of the margin, °C, each value as likely as the other: the 10th, 30th, 50th,
    /// 70th and 90th percentile of a log-normal distribution with median 0.5 °C and ln standard deviation 0.5. Own choice.</summary>
    public IReadOnlyList<double> ScattersC { get; init; } = [0.263, 0.385, 0.5, 0.65, 0.949];

    /// <summary>Share of coats that are marked wrongly, either way, or blushed for a reason that is not the air. Own choice.</summary>
    public double LapseShare { get; init; } = 0.02;

    /// <summary>How sure it must be that a lower limit is enough.</summary>
    public double SureToLower { get; init; } = 0.95;

    /// <summary>How sure a raised limit is to be enough; less than <see cref="SureToLower"/>, for raising is the safe direction.</summary>
    public double SureToRaise { get; init; } = 0.75;

    /// <summary>The margin that the settings want for a coat: the required one and the expanded uncertainty, °C.</summary>
    public double WantedMarginC(double uncertaintyC) => ConfiguredMarginC + (CoverageFactor * uncertaintyC);

    /// <summary>
    /// What scatter adds to the required margin, °C: the verdict guards with k·s, and k·√(s² + scatter²) would be due. The difference is
    /// largest at the least s, which is that of the model.
    /// </summary>
    public double AllowanceC(double scatterC) =>
        CoverageFactor * (Math.Sqrt((ModelUncertaintyC * ModelUncertaintyC) + (scatterC * scatterC)) - ModelUncertaintyC);
}
