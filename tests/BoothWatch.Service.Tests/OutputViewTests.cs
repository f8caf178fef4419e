using BoothWatch.Service.Outputs.Pump;

namespace BoothWatch.Service.Tests;

public class OutputViewTests
{
    private static readonly OutputHealth Fresh = new("influx", 10, 0, 0, 0, 0, null, null, null);

    [Theory]
    [InlineData(0, 0, 0, 0, 0, "working")]
    [InlineData(0, 86400, 90000, 0, 0, "86400 waiting for 25 h")] // While it catches up.
    [InlineData(0, 540, 541, 12, 3, "540 waiting for 9 min, 12 set aside, 3 lost")]
    [InlineData(0, 0, 0, 1, 3, "1 set aside, 3 lost")]
    [InlineData(2, 0, 0, 0, 0, "db cannot be reached")]
    [InlineData(2, 540, 41, 1, 0, "540 waiting for 41 s, 1 set aside: db cannot be reached")]
    public void Line_OfAnOutput_NamesAllThatIsAboveZero(int failures, int waiting, int ageS, int setAside, int lost, string expected)
    {
        OutputHealth health = Fresh with
        {
            FailuresInARow = failures,
            LastError = "db cannot be reached",
            Queued = waiting,
            OldestWaiting = ageS > 0 ? TimeSpan.FromSeconds(ageS) : null,
            SetAside = setAside,
            Dropped = lost,
        };

        Assert.Equal(expected, OutputView.LineOf(health).Detail);
    }

    [Fact]
    public void Line_WithOnlySupersededStates_SpeaksOfNoLoss() =>
        Assert.Equal("working", OutputView.LineOf(Fresh with { Superseded = 7 }).Detail);
}
