using BoothWatch.Outlook;

namespace BoothWatch.Tests.Outlook;

public class MarginPathsTests
{
    [Fact]
    public void Crossing_IsWhereTheMarginIsUsedUp()
    {
        Assert.Equal(1.5, MarginPaths.CrossingOf([2, 1, -1, -2]));
        Assert.Equal(0.5, MarginPaths.CrossingOf([-1, 1, 2]));
        Assert.Equal(double.PositiveInfinity, MarginPaths.CrossingOf([2, 1, 0.1]));
    }

    [Fact]
    public void AMarginThatIsNotKnown_CountsAsTooLittle()
    {
        Assert.Equal(1, MarginPaths.CrossingOf([2, 1, double.NaN]));
        Assert.Equal(double.PositiveInfinity, MarginPaths.CrossingOf([-2, double.NaN, -1]));
    }

    [Fact]
    public void AsItIsNow_HasTheSpreadAndNoOpinion()
    {
        AirPaths air = AirPaths.Of(OutlookDays.Wetter(20), OutlookDays.Today, 54, [new OutlookAir(21, 9)], 30, 10, 60);
        MarginPaths paths = MarginPaths.Of(air, new CriticalDewPoints(airC => airC - 5), 2);
        MarginPaths now = paths.AsItIsNow();
        Assert.Equal(2 * paths.Count, now.Count);
        for (int step = 0; step <= now.Steps; step++)
        {
            Assert.Equal(5, Enumerable.Range(0, now.Count).Average(path => now[path][step]), 9);
            Assert.Equal(
                Enumerable.Range(0, paths.Count).Average(path => Math.Abs(paths[path][step] - 5)),
                Enumerable.Range(0, now.Count).Average(path => Math.Abs(now[path][step] - 5)),
                9);
        }
    }

    // The film model itself, a clear coat with 5 % of retarder.
    [Fact]
    public void CriticalDewPoints_BetweenTheirPoints_AreThoseOfTheFilmModel()
    {
        CriticalDewPoints table = ClearCoat.CriticalDewPoints();
        for (double airC = 5.3; airC < 38; airC += 2.9)
        {
            Assert.Equal(ClearCoat.FindC(airC), table.At(airC), 0.05);
        }

        Assert.InRange(table.Asked, 1, 24);
    }
}
