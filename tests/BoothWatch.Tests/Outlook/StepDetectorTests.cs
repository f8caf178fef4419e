using BoothWatch.Outlook;

namespace BoothWatch.Tests.Outlook;

public class StepDetectorTests
{
    [Theory]
    [InlineData(0.001, 3)]
    [InlineData(-0.001, 3)]
    [InlineData(0.002, 2)]
    public void AStep_IsFoundWithinMinutes(double step, int minutes)
    {
        Random random = new(3);
        double[] ratios = [.. Enumerable.Range(0, 30 + minutes).Select(i => 0.009 + (0.00003 * (random.NextDouble() - 0.5)) + (i >= 30 ? step : 0))];
        Assert.Null(StepDetector.Find(ratios[..30]));
        Assert.Equal(step, StepDetector.Find(ratios)!.Value, 0.00005);
    }

    // The noise of a good sensor, 0.1 % RH or about 0.02 g/kg.
    [Fact]
    public void MereNoise_IsNoStep()
    {
        Random random = new(5);
        Assert.Equal(0, Enumerable.Range(0, 2000).Count(_ =>
            StepDetector.Find([.. Enumerable.Range(0, 60).Select(_ => 0.009 + (0.00004 * (random.NextDouble() + random.NextDouble() - 1)))]) is not null));
    }

    [Fact]
    public void TooFewMinutes_SayNothing() => Assert.Null(StepDetector.Find([0.009, 0.012]));
}
