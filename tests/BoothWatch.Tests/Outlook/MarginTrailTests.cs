using BoothWatch.Outlook;

namespace BoothWatch.Tests.Outlook;

public class MarginTrailTests
{
    [Fact]
    public void OneMix_Closing_IsSeen()
    {
        MarginTrail trail = new();
        Feed(trail, "clear/5", 0, 1200, 3.0);
        // 2.0 °C left, falling 3 °C/h: 40 min.
        Assert.Equal(40, trail.Closing(1200)!.Left.TotalMinutes, 0.1);
    }

    [Fact]
    public void AnotherMix_ThatLowersTheMarginAtOnce_IsNoFall()
    {
        MarginTrail trail = new();
        Feed(trail, "clear/9", 0, 1200, 3.0);
        Feed(trail, "clear/5", 1201, 1800, 1.0);
        Assert.Null(trail.Closing(1800));
    }

    [Fact]
    public void Silence_IsNoPoint()
    {
        MarginTrail trail = new();
        Feed(trail, "clear/5", 0, 1200, 3.0);
        for (int s = 1201; s < 1600; s++)
        {
            trail.Add(s, null, double.NaN);
        }

        Assert.Null(trail.Closing(1600));
    }

    // Falling 3 °C/h.
    private static void Feed(MarginTrail trail, string mix, int fromS, int toS, double startC)
    {
        for (int s = fromS; s <= toS; s++)
        {
            trail.Add(s, mix, startC - ((s - fromS) * 3.0 / 3600));
        }
    }
}
