using BoothWatch.Alerts;
using BoothWatch.Jobs;
using BoothWatch.Tests.Jobs;
using BoothWatch.Verdicts;

namespace BoothWatch.Tests.Alerts;

/// <summary>Timers and soft films. Waits and clearances come from the schedule and from ISO 8502-4, and are tested beside them.</summary>
public class JobAlertsTests
{
    private static readonly DateTimeOffset Sprayed = Sample.Day.AddMinutes(5);
    private static readonly Job Job = Sample.Job(new CoatMarked(1, Sample.Coat(0, stopMinute: 5), null));

    [Fact]
    public void Timer_ThatFallsDue_IsToldOnceWithTheTimeOfTheShop()
    {
        AlertBooth booth = new() { Exhaust = false, Time = Sprayed.AddMinutes(9), Zone = TimeZoneInfo.CreateCustomTimeZone("shop", TimeSpan.FromHours(2), "shop", "shop") };
        booth.Jobs = [new(Job, JobTimers.Of(Job, Sample.TouchUp, null), null)];
        booth.Run(59);
        Assert.Empty(booth.All);

        booth.Run(3600);

        EpisodeChange told = Assert.Single(booth.All, change => change.Step == EpisodeStep.Told);
        Assert.Equal(("Next coat is due", "side table: clear coat, since 10:15"), (told.Title, told.Finding));
        booth.Jobs = [];
        Assert.Equal([EpisodeStep.Lapsed], booth.Run(10).Select(change => change.Step));
    }

    [Fact]
    public void Timer_ThatMovesBackAndForth_IsToldOnce()
    {
        AlertBooth booth = new() { Exhaust = false, Time = Sprayed.AddMinutes(30) };
        for (int time = 0; time < 10; time++)
        {
            booth.Jobs = [Waits(JobTimerKind.NextRound, booth.Time.AddMinutes(time % 2 == 0 ? -1 : 5))];
            booth.Run(200);
        }

        Assert.Equal(1, booth.Told(AlertKind.TimerDue));
    }

    [Theory]
    [InlineData(JobTimerKind.NextRound, -1, "Next round is due")]
    [InlineData(JobTimerKind.Buff, -1, "Ready to buff")]
    [InlineData(JobTimerKind.Hard, -1, null)]
    [InlineData(JobTimerKind.NextRound, -13 * 60, null)]
    public void Timer_ByKindAndAge_IsNewsOrNot(JobTimerKind kind, int dueMin, string? title)
    {
        AlertBooth booth = new() { Exhaust = false, Time = Sprayed.AddDays(8) };
        booth.Jobs = [Waits(kind, booth.Time.AddMinutes(dueMin))];
        booth.Run(5);

        Assert.Equal(title, booth.All.SingleOrDefault(change => change.Step == EpisodeStep.Told)?.Title);
    }

    [Fact]
    public void SoftFilm_ThatComesNearTheDewPointAndUnderIt_IsToldTwiceAndClearedOnce()
    {
        AlertBooth booth = new() { Exhaust = false, Time = Sprayed };
        booth.Jobs = [Watched(2.5)];
        booth.Run(120);
        booth.Jobs = [Watched(-0.5)];
        booth.Run(120);
        Assert.Equal(
            ["Soft film near the dew point", "Dew on a soft film"],
            booth.All.Where(change => change.Step == EpisodeStep.Told).Select(change => change.Title));

        // Above the wanted 3 °C, but not by the half degree that makes it safe again.
        booth.Jobs = [Watched(3.3)];
        booth.Run(600);
        Assert.Equal(0, booth.Cleared(AlertKind.SoftFilm));
        booth.Jobs = [Watched(3.6)];
        booth.Run(130);
        Assert.Equal(1, booth.Cleared(AlertKind.SoftFilm));
    }

    [Fact]
    public void SoftFilm_ThatIsNotKnown_NeitherBeginsNorEndsAnEpisode()
    {
        AlertBooth booth = new() { Exhaust = false, Time = Sprayed };
        booth.Jobs = [Watched(null)];
        booth.Run(300);
        Assert.Empty(booth.All);

        booth.Jobs = [Watched(1)];
        booth.Run(120);
        booth.Jobs = [Watched(null)];
        booth.Run(300);
        booth.Jobs = null;
        booth.Run(300);
        Assert.Equal([EpisodeStep.Began, EpisodeStep.Told], booth.All.Select(change => change.Step));
    }

    private static WatchedJob Waits(JobTimerKind kind, DateTimeOffset due) =>
        new(Job, [new JobTimer(kind, "what it is", Sprayed, TimeSpan.FromHours(4), due, "")], null);

    private static WatchedJob Watched(double? clearanceC) => new(Job, [], SoftFilmWatch.Of(
        Job, null, Sprayed, clearanceC is { } clearance ? 12 + clearance : null, 12, null, 3, new TemperatureText(TemperatureUnit.Celsius)));
}
