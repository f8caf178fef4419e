using BoothWatch.Limits;

namespace BoothWatch.Tests.Limits;

public class NormalDistributionTests
{
    /// <summary>Abramowitz and Stegun, Handbook of Mathematical Functions, tables 26.1 and 26.2, from memory.</summary>
    [Theory]
    [InlineData(0, 0.5, 1e-15)]
    [InlineData(0.5, 0.691462461274013, 1e-12)]
    [InlineData(1, 0.841344746068543, 1e-12)]
    [InlineData(1.96, 0.975002104851780, 1e-12)]
    [InlineData(3, 0.998650101968370, 1e-12)]
    [InlineData(-1.644853626951473, 0.05, 1e-12)]
    [InlineData(-4, 3.167124183311992e-5, 1e-13)]
    [InlineData(-5, 2.866515718791939e-7, 1e-15)]
    [InlineData(-8, 6.220960574271785e-16, 1e-24)]
    public void Cdf_AgainstTheTable_Agrees(double z, double expected, double tolerance) =>
        Assert.InRange(NormalDistribution.Cdf(z), expected - tolerance, expected + tolerance);

    [Fact]
    public void QuickCdf_OverItsRange_AgreesAndRises()
    {
        double last = 0;
        for (int i = -9000; i <= 9000; i++)
        {
            double z = i / 1000.0;
            double share = NormalDistribution.QuickCdf(z);
            Assert.InRange(share - NormalDistribution.Cdf(z), -2e-7, 2e-7);
            Assert.True(share >= last, $"it falls at {z}");
            last = share;
        }

        Assert.Equal(0, NormalDistribution.QuickCdf(double.NegativeInfinity));
        Assert.Equal(1, NormalDistribution.QuickCdf(double.PositiveInfinity));
        Assert.True(double.IsNaN(NormalDistribution.QuickCdf(double.NaN)));
    }

    [Fact]
    public void Cdf_OverItsRange_RisesAndIsSymmetric()
    {
        double last = 0;
        for (int i = -1000; i <= 1000; i++)
        {
            double z = i / 100.0;
            double share = NormalDistribution.Cdf(z);
            Assert.True(share >= last, $"it falls at {z}");
            Assert.Equal(1, share + NormalDistribution.Cdf(-z), 12);
            last = share;
        }

        Assert.Equal(0, NormalDistribution.Cdf(double.NegativeInfinity));
        Assert.Equal(1, NormalDistribution.Cdf(double.PositiveInfinity));
        Assert.True(double.IsNaN(NormalDistribution.Cdf(double.NaN)));
    }
}
