using BoothWatch.Limits;

namespace BoothWatch.Tests.Limits;

/// <summary>
/// A shop whose truth is known: its threshold, its scatter, what air it gets and whether it obeys the verdict. It draws coats from the
/// model that docs/limit.md states, and nothing from the code under test but the wanted margin that it obeys.
/// </summary>
internal sealed class SimulatedShop(int seed, double thresholdC, double scatterC, double wrongMarks = 0.0)
{
    private readonly Random _random = new(seed);
    private int _made;

    public double ThresholdC { get; } = thresholdC;

    public double ScatterC { get; } = scatterC;

    /// <summary>A shop out of the prior of the rules.</summary>
    public static SimulatedShop FromPrior(int seed, double wrongMarks = 0)
    {
        Random random = new(seed * 7919);
        return new SimulatedShop(seed, Normal(random), 0.5 * Math.Exp(0.5 * Normal(random)), wrongMarks);
    }

    /// <summary>The next coat that is sprayed: always at spray, now and then at slow down, seldom at wait.</summary>
    /// <param name="requiredMarginC">Required margin in force, °C.</param>
    /// <param name="dare">Chance that the shop sprays at slow down.</param>
    public LimitCoat Next(double requiredMarginC, double dare = 0.5)
    {
        while (true)
        {
            double margin = 2 + (2 * Normal(_random));
            double own = 0.4 + (0.5 * _random.NextDouble());
            double uncertainty = Math.Sqrt((0.8 * 0.8) + (own * own));
            double chance = margin >= requiredMarginC + (1.65 * uncertainty) ? 1 : margin >= 0 ? dare : dare / 10;
            if (_random.NextDouble() >= chance)
            {
                continue;
            }

            double spread = Math.Sqrt((ScatterC * ScatterC) + (own * own));
            bool blushed = margin + (spread * Normal(_random)) < ThresholdC;
            bool marked = _random.NextDouble() < wrongMarks ? !blushed : blushed;
            int n = _made++;
            return new LimitCoat(n, new DateOnly(2026, 1, 1).AddDays(n / 3), margin, uncertainty, marked);
        }
    }

    /// <summary>Coats sprayed one after the other, the limit in force renewed after each ten when <paramref name="follows"/>.</summary>
    public List<LimitCoat> Spray(int coats, LimitRules rules, bool follows = false)
    {
        List<LimitCoat> made = [];
        double required = rules.ConfiguredMarginC;
        while (made.Count < coats)
        {
            made.Add(Next(required));
            if (follows && made.Count % 10 == 0)
            {
                required = ShopLimit.Of(made, made.Count, rules).RequiredMarginC;
            }
        }

        return made;
    }

    /// <summary>The true chance of blushing of a coat just at the wanted margin, worst over the uncertainties that occur.</summary>
    public double RiskAt(double requiredMarginC) => new[] { 0.4, 0.65, 0.9 }.Max(own =>
    {
        double wanted = requiredMarginC + (1.65 * Math.Sqrt((0.8 * 0.8) + (own * own)));
        return NormalDistribution.Cdf((ThresholdC - wanted) / Math.Sqrt((ScatterC * ScatterC) + (own * own)));
    });

    // Box and Muller.
    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
