using Xunit.Abstractions;

namespace BoothWatch.Service.Tests.Outages;

/// <summary>The light waits for no output: a tick takes as long with every output down as with every output up.</summary>
public sealed class TickLatencyTests(ITestOutputHelper output)
{
    private const int Ticks = 300;
    private const int Attempts = 3;

    [Fact]
    public async Task Tick_WithEveryOutputDown_TakesNoLongerThanWithEveryOutputUp()
    {
        await using TickPair pair = await TickPair.StartAsync();
        await pair.SettleAsync();

        TickComparison ticks;
        int attempt = 0;
        do
        {
            ticks = TickComparison.Measure(Ticks, pair.Up.TickMs, pair.Down.TickMs);
            output.WriteLine(ticks.ToString());
        }
        while (!ticks.SecondIsNoSlower && ++attempt < Attempts);

        Assert.Null(pair.Check());
        Assert.True(ticks.SecondIsNoSlower, $"a tick waits for an output: {ticks}");
    }

    [Theory]
    [InlineData(0.1, 1.1, 1)] // Every tick waits, for far less than any network or disk takes to time out.
    [InlineData(0.5, 0.8, 1)] // Every tick takes a little longer.
    [InlineData(0.5, 5.0, 50)] // One in fifty waits.
    public void Comparison_OfWorkThatWaits_Fires(double usualMs, double waitingMs, int oneIn)
    {
        int turn = 0;
        Assert.False(TickComparison.Measure(200, () => usualMs, () => ++turn % oneIn == 0 ? waitingMs : usualMs).SecondIsNoSlower);
        Assert.True(TickComparison.Measure(200, () => usualMs, () => usualMs).SecondIsNoSlower);
    }
}
