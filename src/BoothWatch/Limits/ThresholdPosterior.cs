namespace BoothWatch.Limits;

/// <summary>
/// What is known of a shop's threshold after its coats: the margin by the model below which a coat of this shop blushes. On a grid,
/// without chance: the same coats always give the same answer.
/// </summary>
/// <remarks>
/// For each scatter the threshold is updated by Bayes' rule from its normal prior. The scatters keep their prior weights: few coats, most
/// of them clear, say next to nothing about scatter, and a cut of this feedback (Plummer 2015, doi:10.1007/s11222-014-9503-z) keeps an
/// order that a shop can rely on: for each scatter the likelihood ratio of a blushed coat rises with the threshold and that of a clear
/// one falls, so a further clear coat never raises any quantile and a further blushed one never lowers it.
/// </remarks>
public sealed class ThresholdPosterior
{
    /// <summary>Ends of the grid, in prior standard deviations.</summary>
    private const double GridSds = 5;
    private const int GridSteps = 500;
    private const int Halvings = 60;

    private readonly LimitRules _rules;
    private readonly double[] _thresholdsC;

    /// <summary>For each scatter the probability that the threshold is at most that of the grid.</summary>
    private readonly double[][] _cumulative;

    /// <summary>Updates the prior.</summary>
    /// <param name="coats">The coats; the order does not matter.</param>
    /// <param name="rules">Prior, scatters and lapse share.</param>
    /// <exception cref="ArgumentException">A figure of a coat is not usable; the message names the coat.</exception>
    public ThresholdPosterior(IEnumerable<LimitCoat> coats, LimitRules rules)
    {
        ArgumentNullException.ThrowIfNull(coats);
        ArgumentNullException.ThrowIfNull(rules);
        LimitCoat[] all = [.. coats];
        if (all.FirstOrDefault(coat => !coat.IsUsable) is { } odd)
        {
            throw new ArgumentException($"coat {odd.CoatId} has the margin {odd.MarginC} °C ± {odd.UncertaintyC} °C; leave it out");
        }

        _rules = rules;
        double end = GridSds * rules.PriorSdC;
        _thresholdsC = [.. Enumerable.Range(0, GridSteps + 1).Select(i => end * ((2.0 * i / GridSteps) - 1))];
        _cumulative = [.. rules.ScattersC.Select(scatter => Cumulative(all, scatter))];
    }

    /// <summary>The threshold that is not exceeded with a probability, °C.</summary>
    /// <param name="probability">Above 0 and below 1.</param>
    public double ThresholdC(double probability) => Quantile(probability, _ => 0);

    /// <summary>The required margin that is enough with a probability, °C: threshold and allowance for scatter.</summary>
    /// <param name="probability">Above 0 and below 1.</param>
    public double NeededMarginC(double probability) => Quantile(probability, _rules.AllowanceC);

    /// <summary>The threshold with its band.</summary>
    public CredibleBand Threshold => Band(ThresholdC);

    /// <summary>The needed margin with its band.</summary>
    public CredibleBand NeededMargin => Band(NeededMarginC);

    /// <summary>Chance of blushing at a margin, with its band.</summary>
    /// <param name="marginC">Margin by the model, °C.</param>
    /// <param name="ownUncertaintyC">Uncertainty of the margin that comes anew with each coat, °C.</param>
    public BlushCurvePoint ChanceAt(double marginC, double ownUncertaintyC)
    {
        List<(double Chance, double Weight)> nodes = new(_cumulative.Length * GridSteps);
        for (int s = 0; s < _cumulative.Length; s++)
        {
            double spread = Math.Sqrt((_rules.ScattersC[s] * _rules.ScattersC[s]) + (ownUncertaintyC * ownUncertaintyC));
            for (int i = 1; i < _thresholdsC.Length; i++)
            {
                double weight = (_cumulative[s][i] - _cumulative[s][i - 1]) / _cumulative.Length;
                if (weight > 0)
                {
                    nodes.Add((BlushLikelihood.Chance(marginC, (_thresholdsC[i] + _thresholdsC[i - 1]) / 2, spread), weight));
                }
            }
        }

        nodes.Sort((a, b) => a.Chance.CompareTo(b.Chance));
        return new BlushCurvePoint(
            marginC, AtWeight(nodes, CredibleBand.Outside), nodes.Sum(node => node.Chance * node.Weight), AtWeight(nodes, 1 - CredibleBand.Outside));
    }

    private static double AtWeight(List<(double Chance, double Weight)> nodes, double probability)
    {
        double sum = 0;
        foreach ((double chance, double weight) in nodes)
        {
            sum += weight;
            if (sum >= probability)
            {
                return chance;
            }
        }

        return nodes[^1].Chance;
    }

    private static CredibleBand Band(Func<double, double> quantile) =>
        new(quantile(CredibleBand.Outside), quantile(0.5), quantile(1 - CredibleBand.Outside));

    private double[] Cumulative(LimitCoat[] coats, double scatterC)
    {
        double[] log = [.. _thresholdsC.Select(t => -0.5 * t * t / (_rules.PriorSdC * _rules.PriorSdC))];
        foreach (LimitCoat coat in coats)
        {
            double own = coat.OwnUncertaintyC(_rules.ModelUncertaintyC);
            double spread = Math.Sqrt((scatterC * scatterC) + (own * own));
            for (int i = 0; i < log.Length; i++)
            {
                log[i] += BlushLikelihood.Log(coat, _thresholdsC[i], spread, _rules.LapseShare);
            }
        }

        double top = log.Max();
        double[] density = [.. log.Select(l => Math.Exp(l - top))];
        double[] cumulative = new double[density.Length];
        for (int i = 1; i < density.Length; i++)
        {
            cumulative[i] = cumulative[i - 1] + ((density[i] + density[i - 1]) / 2);
        }

        double whole = cumulative[^1];
        return [.. cumulative.Select(c => c / whole)];
    }

    // The mixture over the scatters, each moved by what it adds; continuous and rising, so halving finds the place.
    private double Quantile(double probability, Func<double, double> addedC)
    {
        double[] moves = [.. _rules.ScattersC.Select(addedC)];
        double low = _thresholdsC[0] + moves.Min();
        double high = _thresholdsC[^1] + moves.Max();
        for (int i = 0; i < Halvings; i++)
        {
            double middle = (low + high) / 2;
            double below = 0;
            for (int s = 0; s < moves.Length; s++)
            {
                below += At(_cumulative[s], middle - moves[s]);
            }

            (low, high) = below / moves.Length < probability ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }

    private double At(double[] cumulative, double thresholdC)
    {
        double step = _thresholdsC[1] - _thresholdsC[0];
        double place = (thresholdC - _thresholdsC[0]) / step;
        if (place <= 0)
        {
            return 0;
        }

        if (place >= cumulative.Length - 1)
        {
            return 1;
        }

        int i = (int)place;
        return cumulative[i] + ((cumulative[i + 1] - cumulative[i]) * (place - i));
    }
}
