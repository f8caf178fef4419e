using BoothWatch.Outlook;

namespace BoothWatch.Tests.Outlook;

/// <summary>
/// Real weather: June and July 2020 at Zurich, an excerpt of open data (its origin is in the file). The whole years of four stations are scored by
/// <c>BoothWatch.Benchmarks -- outlook FILE</c>; docs/outlook.md has the table.
/// </summary>
public class OpenWeatherTests
{
    private static readonly AirPast Zurich = OpenWeather.Read(Path.Combine(AppContext.BaseDirectory, "Outlook", "Fixtures", "zurich-2020-summer.csv"))[0].Past;
    private static readonly DateOnly End = new(2020, 8, 1);
    private static readonly CriticalDewPoints Clear = ClearCoat.CriticalDewPoints();
    private static readonly CriticalDewPoints DewPointAlone = new(_ => 0);

    [Theory]
    [InlineData(8, 4)]
    [InlineData(8, 8)]
    [InlineData(11, 4)]
    public void Outdoors_WhereTheSunWarmsTheAir_TheOutlookWins(int hour, int ahead)
    {
        HorizonScore score = Score(Clear, hour, ahead);
        Assert.True(score.Wins);
        Assert.InRange(score.Crps / score.CrpsAsNow, 0.4, 0.9);
        Assert.True(score.Brier < score.BrierAsNow);
    }

    [Theory]
    [InlineData(11, 1)]
    [InlineData(11, 2)]
    [InlineData(11, 4)]
    [InlineData(11, 8)]
    [InlineData(14, 2)]
    public void TheDewPointAlone_IsNearlyARandomWalk_AndTheOutlookStaysSilent(int hour, int ahead)
    {
        HorizonScore score = Score(DewPointAlone, hour, ahead);
        Assert.False(score.Wins);
        Assert.InRange(score.Crps / score.CrpsAsNow, 0.9, 1.1);
    }

    [Theory]
    [InlineData(8, 1)]
    [InlineData(8, 2)]
    [InlineData(8, 4)]
    [InlineData(11, 1)]
    [InlineData(11, 4)]
    [InlineData(14, 1)]
    [InlineData(14, 4)]
    public void ATrendThatGoesOn_LosesToAsItIsNow(int hour, int ahead)
    {
        double[] excess =
        [
            .. Zurich.Dates.Select(date => Zurich.Trace(date, (hour - 1) * 6, (1 + ahead) * 6)).Where(trace => trace.Length == ((1 + ahead) * 6) + 1)
                .Select(trace => (Then: trace[0].DewPointC, Now: trace[6].DewPointC, Came: trace[^1].DewPointC))
                .Select(dew => Math.Abs(dew.Now + ((dew.Now - dew.Then) * ahead) - dew.Came) - Math.Abs(dew.Now - dew.Came)),
        ];
        Assert.True(excess.Average() > 0);
    }

    // What it said on every day, with the days before it alone: 'spray day' must have held in about nine of ten.
    [Fact]
    public void ASprayDay_HeldMostly()
    {
        List<bool> held = [];
        foreach (DateOnly today in Zurich.Dates.Skip(20))
        {
            foreach (int hour in new[] { 8, 11 })
            {
                OutlookAir[] came = Zurich.Trace(today, hour * 6, 60);
                if (came.Length == 61 && OutlookComposer.Of(Question(today, hour, came[0])) is { Word: OutlookWord.SprayDay } outlook)
                {
                    held.Add(MarginPaths.CrossingOf(MarginPaths.RoomOf(came, Clear, 2)) > outlook.End.TotalMinutes / AirDay.SlotMinutes);
                }
            }
        }

        Assert.InRange(held.Count, 10, 100);
        Assert.InRange(held.Count(h => h) / (double)held.Count, 0.8, 1);
    }

    private static OutlookQuestion Question(DateOnly today, int hour, OutlookAir now) => new()
    {
        Past = Zurich,
        Today = today,
        TimeOfDay = TimeSpan.FromHours(hour),
        DayEnds = TimeSpan.FromHours(18),
        Start = [now],
        Critical = Clear,
        WantedC = 2,
    };

    private static HorizonScore Score(CriticalDewPoints critical, int hour, int ahead) =>
        OutlookScore.Of(Zurich, End, hour * 6, critical, 2, OutlookQuestion.UsualWindow, 60).Single(score => score.Step == ahead * 6);
}
