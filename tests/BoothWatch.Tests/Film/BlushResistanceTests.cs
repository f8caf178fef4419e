using BoothWatch.Film;

namespace BoothWatch.Tests.Film;

/// <summary>
/// Blush resistance of neat solvents, % RH at 26.7 °C (80 °F), as solvent makers print it. The sheets do not say what the solution is flowed
/// out on. Assumed here: 8 % by mass of cellulose nitrate, 200 µm wet, on a plate of 1 mm glass in air of 0.5 m/s.
/// </summary>
public class BlushResistanceTests
{
    private static readonly Substrate ThinPlate = new("1 mm glass", 0.001, 1.0, 2.1e6);

    // n-butyl acetate: supplier's data sheet. All others from memory of solvent makers' selector charts; they rank, they do not calibrate.
    private static readonly (string Solvent, double Pct)[] Remembered =
    [
        ("ethyl acetate", 38), ("methyl ethyl ketone", 45), ("n-propyl acetate", 65), ("methyl isobutyl ketone", 78), ("isobutyl acetate", 78),
        ("n-butyl acetate", 83), ("methyl isoamyl ketone", 89), ("1-methoxy-2-propyl acetate", 92), ("methyl n-amyl ketone", 93),
        ("ethyl 3-ethoxypropionate", 94), ("2-butoxyethanol", 96),
    ];

    [Fact]
    public void NButylAcetate_AtEightyFahrenheit_ResistsToEightyThreePercent() =>
        Assert.Equal(83, CriticalPct("n-butyl acetate"), 2.0);

    [Fact]
    public void NeatSolvents_AgainstRememberedValues_RankAlike()
    {
        double[] model = [.. Remembered.Select(row => CriticalPct(row.Solvent))];
        Assert.InRange(RankCorrelation(model, [.. Remembered.Select(row => row.Pct)]), 0.97, 1);
    }

    [Fact]
    public void NeatSolvents_AgainstRememberedValues_StayWithinEightPoints() =>
        Assert.All(Remembered, row => Assert.InRange(CriticalPct(row.Solvent) - row.Pct, -8, 8));

    [Theory]
    [InlineData("acetone")]
    [InlineData("methyl acetate")]
    public void FastestSolvents_OnThinPlate_BlushInRatherDryAir(string solvent) => Assert.InRange(CriticalPct(solvent), 10, 40);

    [Fact]
    public void FastSolvent_OnThickGlass_ComesOutWarmerThanOnThinPlate()
    {
        double thick = CriticalPct("ethyl acetate", ThinPlate with { ThicknessM = 0.006 });
        Assert.InRange(thick - CriticalPct("ethyl acetate"), 15, 45);
    }

    private static double CriticalPct(string solvent, Substrate? plate = null) => TestCoat.CriticalPct(
        TestCoat.Conditions(TestCoat.NitrateIn(solvent), airC: 26.7, wetFilmUm: 200) with { Substrate = plate ?? ThinPlate });

    private static double RankCorrelation(double[] left, double[] right)
    {
        double[] a = Ranks(left);
        double[] b = Ranks(right);
        double mean = a.Average();
        return a.Zip(b, (x, y) => (x - mean) * (y - mean)).Sum()
            / Math.Sqrt(a.Sum(x => (x - mean) * (x - mean)) * b.Sum(y => (y - mean) * (y - mean)));
    }

    private static double[] Ranks(double[] values) =>
        [.. values.Select(value => values.Count(other => other < value) + ((values.Count(other => other == value) - 1) / 2.0))];
}
