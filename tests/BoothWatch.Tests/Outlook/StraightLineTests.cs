using BoothWatch.Outlook;
using FsCheck.Xunit;

namespace BoothWatch.Tests.Outlook;

public class StraightLineTests
{
    // NIST Statistical Reference Datasets, linear regression, "Norris": ozone monitors against a standard, 36 observations, y and x.
    private static readonly double[] NorrisY =
    [
        0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3, 448.9, 10.8,
        557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4, 449.2, 0.2,
    ];

    private static readonly double[] NorrisX =
    [
        0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9, 338.0, 447.5, 11.6,
        556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3, 229.2, 669.1, 448.9, 0.5,
    ];

    [Fact]
    public void Norris_OfNist_GivesTheCertifiedSlopeInterceptAndError()
    {
        StraightLine line = StraightLine.Through(NorrisX, NorrisY);
        Assert.Equal(1.00211681802045, line.Slope, 1e-12);
        Assert.Equal(-0.262323073774029, line.Intercept, 1e-9);
        Assert.Equal(0.000429796848199937, line.SlopeError, 1e-14);
    }

    [Fact]
    public void Residuals_ThatResembleTheirNeighbours_WidenTheError()
    {
        double[] x = [.. Enumerable.Range(0, 10).Select(i => (double)i)];
        StraightLine wave = StraightLine.Through(x, [.. x.Select(v => Math.Sin(v / 2))]);
        StraightLine jitter = StraightLine.Through(x, [.. x.Select(v => v % 2)]);
        Assert.True(wave.AdjustedSlopeError > 1.5 * wave.SlopeError, $"{wave}");
        Assert.Equal(jitter.SlopeError, jitter.AdjustedSlopeError);
    }

    [Property]
    public bool PointsOnALine_GiveThatLineWithoutError(short slope, short intercept, byte more)
    {
        double[] x = [.. Enumerable.Range(0, StraightLine.FewestPoints + (more % 20)).Select(i => i * 0.5)];
        StraightLine line = StraightLine.Through(x, [.. x.Select(v => intercept + (slope * v))]);
        return Math.Abs(line.Slope - slope) < 1e-9 * (1 + Math.Abs(slope)) && Math.Abs(line.At(3) - intercept - (3.0 * slope)) < 1e-6 && line.SlopeError < 1e-6;
    }

    [Fact]
    public void Line_ThroughTooLittle_SaysWhatItTakes()
    {
        Assert.Contains("given were 2 x", Assert.Throws<ArgumentException>(() => StraightLine.Through([1, 2], [1, 2])).Message, StringComparison.Ordinal);
        Assert.Contains("Every x is the same", Assert.Throws<ArgumentException>(() => StraightLine.Through([1, 1, 1], [1, 2, 3])).Message, StringComparison.Ordinal);
    }
}
