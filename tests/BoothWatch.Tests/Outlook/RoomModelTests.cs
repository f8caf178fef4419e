using BoothWatch.Outlook;
using FsCheck.Xunit;

namespace BoothWatch.Tests.Outlook;

public class RoomModelTests
{
    // The well-mixed room with a constant intake decays exponentially: ASTM E741, concentration decay, ln C against t has the slope -n (from memory).
    [Theory]
    [InlineData(1.5)]
    [InlineData(4)]
    [InlineData(12)]
    public void Fit_OfAnExponentialDecay_IsItsAirChangeRate(double changesPerH)
    {
        RoomPoint[] points = [.. Enumerable.Range(0, 60).Select(i => new RoomPoint(i / 60.0, 0.008 + 0.0005 + (0.003 * Math.Exp(-changesPerH * i / 60.0)), 0.008))];
        RoomFit fit = RoomFit.Of(points)!;
        Assert.Equal(changesPerH, fit.ChangesPerH, 0.001 * changesPerH);
        Assert.Equal(0.0005, fit.ExcessRatio, 0.00002);
    }

    [Theory]
    [InlineData(2, 1)]
    [InlineData(6, 2)]
    [InlineData(15, 3)]
    public void Fit_OfANoisyRoomWithAChangingIntake_FindsTheRateWithinItsError(double changesPerH, int seed)
    {
        RoomFit fit = RoomFit.Of(Step(new Random(seed), changesPerH, 0.0025, 0.00004))!;
        Assert.Equal(Math.Log(changesPerH), Math.Log(fit.ChangesPerH), 3 * fit.LogError);
        Assert.InRange(fit.LogError, 0, 0.2);
    }

    [Fact]
    public void NoStep_NoFit() => Assert.Null(RoomFit.Of(Step(new Random(1), 5, 0.0001, 0.00005)));

    [Fact]
    public void TooFewMinutes_NoFit() => Assert.Null(RoomFit.Of([.. Step(new Random(1), 5, 0.003, 0).Take(RoomFit.FewestPoints - 1)]));

    [Property(MaxTest = 30)]
    public void Model_OfSeveralSteps_FindsTheRateAndItsSpread(int seed)
    {
        Random random = new(seed);
        RoomModel model = RoomModel.Learn([.. Enumerable.Range(0, 8).Select(i => Step(random, 5 + (0.25 * (i - 4)), i % 2 == 0 ? 0.003 : -0.002, 0.00003))])!;
        Assert.InRange(model.ChangesPerH, 4, 6);
        Assert.InRange(model.ChangesPerH, model.LeastPerH, model.MostPerH);
        Assert.Equal(8, model.Steps);
    }

    [Fact]
    public void Model_OfTooFewSteps_IsNone() =>
        Assert.Null(RoomModel.Learn([.. Enumerable.Range(0, RoomModel.FewestSteps - 1).Select(i => Step(new Random(i), 5, 0.003, 0.00003))]));

    [Fact]
    public void Room_AfterALongWhile_IsAtTheIntakeAndItsExcess()
    {
        RoomModel model = new(5, 4, 6, 0.0004, 6);
        Assert.Equal(0.010, model.RatioAfter(0.010, 0.012, 0), 9);
        Assert.Equal(0.0124, model.RatioAfter(0.010, 0.012, 5), 6);

        // Half way after ln 2 / n.
        Assert.Equal(0.0112, model.RatioAfter(0.010, 0.012, Math.Log(2) / 5), 9);
    }

    [Property]
    public void DamperIntake_NeverDriesTheBooth(ushort booth, ushort intake, ushort more, byte minutes)
    {
        RoomModel model = new(5, 4, 6, 0.0004, 6);
        (double w, double win, double add) = (booth / 3e6, intake / 3e6, more / 3e6);
        Assert.True(model.RatioAfter(w, win + add, minutes / 60.0) >= model.RatioAfter(w, win, minutes / 60.0) - 1e-15);
    }

    private static RoomPoint[] Step(Random random, double changesPerH, double step, double noise)
    {
        RoomPoint[] points = new RoomPoint[45];
        double booth = 0.008 + 0.0004 + step;
        for (int i = 0; i < points.Length; i++)
        {
            double intake = 0.008 + (0.0003 * Math.Sin(i / 20.0));
            points[i] = new RoomPoint(i / 60.0, booth + (noise * (random.NextDouble() + random.NextDouble() - 1) * 2.4), intake);
            for (int second = 0; second < 60; second++)
            {
                booth += changesPerH / 3600 * (0.008 + (0.0003 * Math.Sin((i + (second / 60.0)) / 20.0)) + 0.0004 - booth);
            }
        }

        return points;
    }
}
