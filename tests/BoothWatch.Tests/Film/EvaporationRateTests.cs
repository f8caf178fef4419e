namespace BoothWatch.Tests.Film;

/// <summary>
/// Relative evaporation rates as ASTM D3539 gives them: the time in which 90 % by volume leaves a filter paper in dry air of 25 °C,
/// n-butyl acetate = 1. The run mimics 0.7 mL on 64 cm² of thin paper, air at 1 m/s; only ratios of times are compared.
/// </summary>
public class EvaporationRateTests
{
    private static readonly Lazy<double> ReferenceS = new(() => NinetyPercentS("n-butyl acetate"));

    public static TheoryData<string, double> Published
    {
        get
        {
            TheoryData<string, double> rows = [];
            foreach ((string solvent, double rate) in PublishedFigures.EvaporationRates)
            {
                rows.Add(solvent, rate);
            }

            return rows;
        }
    }

    [Theory]
    [MemberData(nameof(Published))]
    public void NeatSolvent_OnFilterPaperInDryAir_EvaporatesWithinFactor1Point4OfPublished(string solvent, double published)
    {
        double ratio = ReferenceS.Value / NinetyPercentS(solvent) / published;
        Assert.InRange(ratio, 1 / 1.4, 1.4);
    }

    // Left outside 1.4: methanol (3.5 in one thinner table, 2.1 in others: sources disagree), 2-butoxyethyl acetate (0.03 from memory,
    // 0.1 on one page), 2-ethoxyethanol (0.3 from memory). They must still rank rightly against their neighbours.
    [Theory]
    [InlineData("2-butoxyethyl acetate", "2-butoxyethanol")]
    [InlineData("2-ethoxyethanol", "n-butyl acetate")]
    [InlineData("methanol", "ethyl acetate")]
    [InlineData("toluene", "methanol")]
    public void SolventOfDisputedRate_AgainstFasterNeighbour_IsSlower(string slower, string faster) =>
        Assert.True(NinetyPercentS(slower) > NinetyPercentS(faster));

    [Fact]
    public void NeatSolvents_AllTogether_AgreeWithPublishedWithinFifteenPercentOnAverage()
    {
        double[] logarithms = [.. PublishedFigures.EvaporationRates.Select(row => Math.Abs(Math.Log(ReferenceS.Value / NinetyPercentS(row.Solvent) / row.Rate)))];
        Assert.InRange(logarithms.Average(), 0, Math.Log(1.15));
    }

    private static double NinetyPercentS(string solvent) => TestCoat.NinetyPercentS(solvent);
}
