using BoothWatch.Verdicts;

namespace BoothWatch.Tests.Verdicts;

public class VerdictDwellTests
{
    private readonly VerdictDwell _dwell = new(TimeSpan.FromSeconds(60), TimeSpan.FromSeconds(5));
    private double _nowS;

    [Fact]
    public void Verdict_Default_IsWait() => Assert.Equal(Verdict.Wait, default);

    [Fact]
    public void Hold_AtStart_WaitsForTheWholeDwell()
    {
        for (int tick = 0; tick < 60; tick++)
        {
            Assert.Equal(Verdict.Wait, Tick(Verdict.Spray).Verdict);
        }

        Assert.Equal(Verdict.Spray, Tick(Verdict.Spray).Verdict);
    }

    [Fact]
    public void Hold_Worse_ShowsAtOnce()
    {
        Reach(Verdict.Spray);
        Assert.Equal(Verdict.SlowDown, Tick(Verdict.SlowDown).Verdict);
        Assert.Equal(Verdict.Wait, Tick(Verdict.Wait).Verdict);
    }

    [Fact]
    public void Hold_OneBadTick_CostsTheWholeDwell()
    {
        Reach(Verdict.Spray);
        Tick(Verdict.Wait);
        for (int tick = 0; tick < 60; tick++)
        {
            Assert.Equal(Verdict.Wait, Tick(Verdict.Spray).Verdict);
        }

        Assert.Equal(Verdict.Spray, Tick(Verdict.Spray).Verdict);
    }

    [Fact]
    public void Hold_OneTickSlower_FallsToSlowDownOnly()
    {
        Reach(Verdict.Spray);
        Tick(Verdict.SlowDown);
        Assert.Equal(Verdict.SlowDown, Tick(Verdict.Spray).Verdict);
        Tick(Verdict.Spray, count: 58);
        Assert.Equal(Verdict.SlowDown, Tick(Verdict.Spray).Verdict);
        Assert.Equal(Verdict.Spray, Tick(Verdict.Spray).Verdict);
    }

    [Fact]
    public void Hold_BetterInSteps_ShowsEachStepAfterItsOwnDwell()
    {
        Tick(Verdict.Wait);
        Tick(Verdict.SlowDown, count: 40);
        Tick(Verdict.Spray, count: 20);
        // Slow down or better has now held for 60 s, spray for 20 s.
        Assert.Equal(Verdict.SlowDown, Tick(Verdict.Spray).Verdict);
        Tick(Verdict.Spray, count: 38);
        Assert.Equal(Verdict.SlowDown, Tick(Verdict.Spray).Verdict);
        Assert.Equal(Verdict.Spray, Tick(Verdict.Spray).Verdict);
    }

    [Theory]
    [InlineData(Verdict.Wait, Verdict.SlowDown)]
    [InlineData(Verdict.SlowDown, Verdict.Spray)]
    [InlineData(Verdict.Wait, Verdict.Spray)]
    public void Hold_NoiseAroundALimit_NeverTogglesTheLight(Verdict worse, Verdict better)
    {
        Reach(better);
        Random noise = new(7);
        List<Verdict> shown = [];
        for (int tick = 0; tick < 3600; tick++)
        {
            shown.Add(Tick(noise.NextDouble() < 0.3 ? worse : better).Verdict);
        }

        int changes = shown.Zip(shown.Skip(1)).Count(pair => pair.First != pair.Second);
        Assert.Equal(1, changes);
        Assert.Equal(worse, shown[^1]);
    }

    [Fact]
    public void Hold_AGapInTheTicks_StartsTheDwellAgain()
    {
        Reach(Verdict.Spray);
        _nowS += 5.0;
        Assert.Equal(Verdict.Wait, Tick(Verdict.Spray).Verdict);
        Tick(Verdict.Spray, count: 58);
        Assert.Equal(Verdict.Wait, Tick(Verdict.Spray).Verdict);
        Assert.Equal(Verdict.Spray, Tick(Verdict.Spray).Verdict);
    }

    [Fact]
    public void Hold_AGapWithinTheLimit_KeepsHolding()
    {
        Reach(Verdict.Spray);
        _nowS += 4.0;
        Assert.Equal(Verdict.Spray, Tick(Verdict.Spray).Verdict);
    }

    [Fact]
    public void Hold_TimeRunsBackwards_StartsTheDwellAgain()
    {
        Tick(Verdict.Spray, count: 300);
        _nowS -= 10;
        Assert.Equal(Verdict.Wait, Tick(Verdict.Spray).Verdict);
    }

    [Fact]
    public void Hold_WhileHeldBack_SaysForHowLong()
    {
        Tick(Verdict.Wait);
        Tick(Verdict.Spray, count: 20);
        Assessment shown = Tick(Verdict.Spray);
        Assert.Equal("conditions are good for spray: showing it in 40 s if they hold", shown.Reasons[0].ToString());
        Assert.Equal(Verdict.Wait, shown.Reasons[0].Limit);
        Assert.Single(shown.Reasons);
    }

    [Fact]
    public void Hold_HeldBackInSteps_NamesTheNextStep()
    {
        Tick(Verdict.SlowDown, count: 30);
        Assert.Equal("conditions are good enough for slow down: showing it in 30 s if they hold", Tick(Verdict.Spray).Reasons[0].ToString());
        Tick(Verdict.Spray, count: 29);
        Assert.Equal("conditions are good for spray: showing it in 30 s if they hold", Tick(Verdict.Spray).Reasons[0].ToString());
    }

    [Fact]
    public void Hold_NothingHeldBack_ChangesNothing()
    {
        Assessment wait = Decided(Verdict.Wait);
        Assert.Same(wait, _dwell.Hold(wait, TimeSpan.Zero));
    }

    private void Reach(Verdict verdict)
    {
        Tick(verdict, count: 61);
        Assert.Equal(verdict, Tick(verdict).Verdict);
    }

    private Assessment Tick(Verdict decided, int count = 1)
    {
        Assessment shown = Decided(decided);
        for (int tick = 0; tick < count; tick++)
        {
            shown = _dwell.Hold(Decided(decided), TimeSpan.FromSeconds(_nowS));
            _nowS += 1;
        }

        return shown;
    }

    private static Assessment Decided(Verdict verdict) => new()
    {
        Time = GoodBooth.Noon,
        Snapshot = GoodBooth.Snapshot(),
        Air = GoodBooth.Air(),
        Film = GoodBooth.Film(),
        Verdict = verdict,
        Reasons = [new Reason("test", verdict, $"because {verdict.ToString().ToLowerInvariant()}", "do it")],
    };
}
