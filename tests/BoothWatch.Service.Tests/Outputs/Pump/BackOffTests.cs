using BoothWatch.Service.Outputs.Pump;

namespace BoothWatch.Service.Tests.Outputs.Pump;

public sealed class BackOffTests
{
    [Fact]
    public void NextWait_WithoutRandomPart_DoublesUpToTheLongest()
    {
        var backOff = new BackOff(TimeSpan.FromSeconds(0.5), TimeSpan.FromSeconds(6), () => 1);

        double[] waits = [.. Enumerable.Range(0, 6).Select(_ => backOff.NextWait().TotalSeconds)];

        Assert.Equal([0.5, 1, 2, 4, 6, 6], waits);
    }

    [Fact]
    public void NextWait_AtLeastRandomPart_IsHalfOfTheFullWait()
    {
        var backOff = new BackOff(TimeSpan.FromSeconds(1), TimeSpan.FromSeconds(60), () => 0);

        Assert.Equal([0.5, 1, 2], Enumerable.Range(0, 3).Select(_ => backOff.NextWait().TotalSeconds));
    }

    [Fact]
    public void NextWait_AfterReset_StartsAgainFromTheFirst()
    {
        var backOff = new BackOff(TimeSpan.FromSeconds(1), TimeSpan.FromSeconds(60), () => 1);
        backOff.NextWait();
        backOff.NextWait();

        backOff.Reset();

        Assert.Equal(0, backOff.FailuresInARow);
        Assert.Equal(TimeSpan.FromSeconds(1), backOff.NextWait());
    }

    [Fact]
    public void NextWait_AfterManyFailures_StaysAtTheLongestAndNeverOverflows()
    {
        var backOff = new BackOff(TimeSpan.FromSeconds(0.5), TimeSpan.FromDays(20), () => 1);

        for (int i = 0; i < 10_000; i++)
        {
            Assert.InRange(backOff.NextWait(), TimeSpan.FromSeconds(0.5), TimeSpan.FromDays(20));
        }

        Assert.Equal(10_000, backOff.FailuresInARow);
    }

    [Fact]
    public void NextWait_WithFirstOverLongest_IsTheLongest() =>
        Assert.Equal(TimeSpan.FromSeconds(2), new BackOff(TimeSpan.FromSeconds(9), TimeSpan.FromSeconds(2), () => 1).NextWait());
}
