using BoothWatch.Film;
using BoothWatch.Jobs;

namespace BoothWatch.Tests.Jobs;

/// <summary>Waits of the usual touch-up round (common practice, no source), stretched by the factor of the drying runs.</summary>
public class JobTimersTests
{
    private static readonly DryingDelay AsPlanned = new() { TimeToSetS = 90, ReferenceTimeToSetS = 90, Factor = 1, Causes = [] };
    private static readonly DryingDelay Half = new() { TimeToSetS = 135, ReferenceTimeToSetS = 90, Factor = 1.5, Causes = [new DelayCause("air of 12.0 °C", 1.5)] };
    private static readonly DryingDelay Never = new() { TimeToSetS = null, ReferenceTimeToSetS = 90, Factor = null, Causes = [new DelayCause("air of 2.0 °C", null)] };

    [Fact]
    public void Timers_WithinARound_NameTheNextCoat()
    {
        JobTimer next = Timers(1, AsPlanned)[0];
        Assert.Equal(JobTimerKind.NextCoat, next.Kind);
        Assert.Equal("clear coat", next.What);
        Assert.Equal(TimeSpan.FromMinutes(10), next.Wait);
    }

    [Fact]
    public void Timers_AtTheEndOfARound_SayWhatToSandWith()
    {
        JobTimer next = Timers(3, AsPlanned)[0];
        Assert.Equal(JobTimerKind.NextRound, next.Kind);
        Assert.Equal("round 2 of 2: knock off dust with nothing coarser than 800 grit, then flash coat", next.What);
        Assert.Equal(TimeSpan.FromHours(4), next.Wait);
        Assert.Empty(next.Why);
    }

    [Fact]
    public void Timers_AfterTheLastCoat_RunUntilHardAndUntilBuffing()
    {
        IReadOnlyList<JobTimer> timers = Timers(6, AsPlanned);
        Assert.Equal([JobTimerKind.Hard, JobTimerKind.Buff], timers.Select(timer => timer.Kind));
        Assert.Equal(TimeSpan.FromDays(7), timers[1].Wait);
    }

    [Fact]
    public void Timers_InSlowAir_AreLongerAndSayWhy()
    {
        JobTimer next = Timers(3, Half)[0];
        Assert.Equal(TimeSpan.FromHours(6), next.Wait);
        Assert.Contains("1.5 times as long as planned: air of 12.0 °C (times 1.5)", next.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void Timers_OfAFilmThatDoesNotSet_HaveNoEnd()
    {
        JobTimer next = Timers(3, Never)[0];
        Assert.Null(next.Due);
        Assert.Null(next.LeftAt(Sample.Day));
        Assert.StartsWith("this film does not set in this air: air of 2.0 °C", next.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void Timers_WithoutAir_SayThatTheyAreTheLeast() =>
        Assert.Contains("at least as long as planned", Timers(3, null)[0].Why, StringComparison.Ordinal);

    [Fact]
    public void Timers_OfAFinishedJobOrWithoutCoat_AreNone()
    {
        Assert.Empty(JobTimers.Of(Sample.Job(), Sample.TouchUp, AsPlanned));
        Assert.Empty(JobTimers.Of(Sample.Job(new CoatMarked(1, Sample.Coat(0), null), new JobFinished()), Sample.TouchUp, AsPlanned));
    }

    private static IReadOnlyList<JobTimer> Timers(int coats, DryingDelay? delay)
    {
        CoatKind[] kinds = [CoatKind.Flash, CoatKind.Clear, CoatKind.Flash];
        Job job = Sample.Job([.. Enumerable.Range(0, coats).Select(i => new CoatMarked(i + 1, Sample.Coat(i * 20, kinds[i % 3], stopMinute: (i * 20) + 6), null))]);
        return JobTimers.Of(job, Sample.TouchUp, delay);
    }
}
