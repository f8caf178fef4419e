using BoothWatch.Outlook;
using FsCheck.Xunit;

namespace BoothWatch.Tests.Outlook;

public class OutlookComposerTests
{
    [Fact]
    public void AHabitOfTheDays_IsForetold()
    {
        DayOutlook outlook = OutlookComposer.Of(OutlookDays.Question(OutlookDays.Wetter(40)));
        Assert.Equal((OutlookSilence.None, OutlookWord.Closes), (outlook.Silence, outlook.Word));

        // 5 °C of room; the days climb by 4.8 to 7.2 °C over three hours that begin at ten to twelve.
        Assert.InRange(outlook.Middle!.Value, TimeSpan.FromHours(2.5), TimeSpan.FromHours(5.5));
        Assert.True(outlook.Early < outlook.Middle && (outlook.Late is null || outlook.Middle < outlook.Late));
        Assert.Equal(30, outlook.Days);
    }

    [Fact]
    public void AMarginThatNoDayUsesUp_IsASprayDay()
    {
        DayOutlook outlook = OutlookComposer.Of(OutlookDays.Question(OutlookDays.Wetter(40, 3)) with { WantedC = 0.5 });
        Assert.Equal((OutlookWord.SprayDay, null), (outlook.Word, outlook.Middle));
        Assert.True(outlook.CoversTheDay);
    }

    [Fact]
    public void AMarginThatIsTooSmallAndStays_IsNoSprayDay() =>
        Assert.Equal(OutlookWord.NoSprayDay, OutlookComposer.Of(OutlookDays.Question(OutlookDays.Wetter(40), dewPointC: 15)).Word);

    [Fact]
    public void AirThatDriesEveryDay_OpensLater()
    {
        DayOutlook outlook = OutlookComposer.Of(OutlookDays.Question(OutlookDays.Wetter(40, -6), dewPointC: 17));
        Assert.Equal(OutlookWord.Opens, outlook.Word);
        Assert.InRange(outlook.Middle!.Value, TimeSpan.FromHours(2), TimeSpan.FromHours(6));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(4)]
    [InlineData(14)]
    public void TooFewDays_AreSilence_ThatCountsThem(int days)
    {
        DayOutlook outlook = OutlookComposer.Of(OutlookDays.Question(OutlookDays.Wetter(days)));
        Assert.Equal((OutlookWord.Silent, OutlookSilence.TooFewDays, days), (outlook.Word, outlook.Silence, outlook.Days));
    }

    [Fact]
    public void DaysThatWereNotRecordedAtThisTime_DoNotCount()
    {
        AirPast past = OutlookDays.Past(40, (back, hour) => back > 10 && hour is > 8 and < 11 ? null : new OutlookAir(21, 10));
        Assert.Equal((OutlookSilence.TooFewDays, 10), (OutlookComposer.Of(OutlookDays.Question(past)).Silence, OutlookComposer.Of(OutlookDays.Question(past)).Days));
    }

    // The shop was shut for weeks: what is left of spring is no record that anything could be scored on now.
    [Theory]
    [InlineData(0, 5)]
    [InlineData(8, 13)]
    [InlineData(12, 12)]
    public void AGapOfWeeks_IsTooFewDays_AndNotNoBetter(int recent, int counted)
    {
        AirPast past = OutlookDays.Past(60, (back, hour) => back > recent && back <= 41 ? null : new OutlookAir(21, 8 + (0.5 * Math.Max(0, hour - 9))));
        DayOutlook outlook = OutlookComposer.Of(OutlookDays.Question(past));
        Assert.Equal((OutlookSilence.TooFewDays, counted), (outlook.Silence, outlook.Days));
    }

    // A record that ends with the working day, as that of a machine that is switched off then.
    [Theory]
    [InlineData(16.5)]
    [InlineData(17)]
    [InlineData(17.25)]
    public void DaysThatEndWithTheWork_CountToTheEnd(double hour)
    {
        AirPast past = OutlookDays.Past(40, (back, at) => at < 18 ? OutlookDays.Wetter(40).Trace(OutlookDays.Today.AddDays(-back), (int)Math.Round(at * 6), 0)[0] : null);
        Assert.NotEqual(OutlookSilence.TooFewDays, OutlookComposer.Of(OutlookDays.Question(past, hour: hour)).Silence);
    }

    // Not once in a while by luck: of forty shops without any habit nearly all must be silent.
    [Fact]
    public void WanderingAir_IsSilence()
    {
        DayOutlook[] outlooks = [.. Enumerable.Range(1, 40).Select(seed => OutlookComposer.Of(OutlookDays.Question(OutlookDays.Wandering(60, seed))))];
        Assert.InRange(outlooks.Count(outlook => outlook.Word != OutlookWord.Silent), 0, 3);
        Assert.All(outlooks.Where(outlook => outlook.Word == OutlookWord.Silent), outlook => Assert.Equal(OutlookSilence.NoBetter, outlook.Silence));
    }

    [Fact]
    public void NoAir_IsSilence() =>
        Assert.Equal(OutlookSilence.AirUnknown, OutlookComposer.Of(OutlookDays.Question(OutlookDays.Wetter(40)) with { Start = [] }).Silence);

    [Fact]
    public void NoFilmAnswer_IsSilence() =>
        Assert.Equal(
            OutlookSilence.MarginUnknown,
            OutlookComposer.Of(OutlookDays.Question(OutlookDays.Wetter(40)) with { Critical = new CriticalDewPoints(_ => double.NaN) }).Silence);

    [Theory]
    [InlineData(17.8)]
    [InlineData(20)]
    public void ADayThatIsOver_IsSilence(double hour) =>
        Assert.Equal(OutlookSilence.DayOver, OutlookComposer.Of(OutlookDays.Question(OutlookDays.Wetter(40), hour: hour)).Silence);

    [Property(MaxTest = 40)]
    public void DamperAir_NeverLengthensTheTimeLeft(ushort start, ushort more)
    {
        double dewPointC = 4 + (start % 900 / 100.0);
        AirPast past = OutlookDays.Wetter(40);
        DayOutlook dry = OutlookComposer.Of(OutlookDays.Question(past, dewPointC));
        DayOutlook damp = OutlookComposer.Of(OutlookDays.Question(past, dewPointC + (more % 500 / 100.0)));
        if (!dry.HoldsNow || !damp.HoldsNow)
        {
            Assert.False(damp.HoldsNow && !dry.HoldsNow);
            return;
        }

        Assert.True(Length(damp.Early) <= Length(dry.Early));
        Assert.True(Length(damp.Middle) <= Length(dry.Middle));
        Assert.True(Length(damp.Late) <= Length(dry.Late));
        Assert.True(damp.ShareAtEnd <= dry.ShareAtEnd + 1e-9);

        static TimeSpan Length(TimeSpan? time) => time ?? TimeSpan.MaxValue;
    }

    [Property(MaxTest = 40)]
    public void AHigherWantedMargin_NeverMakesItASprayDay(ushort more)
    {
        AirPast past = OutlookDays.Wetter(40, 3);
        OutlookWord word = OutlookComposer.Of(OutlookDays.Question(past, wantedC: 2)).Word;
        OutlookWord stricter = OutlookComposer.Of(OutlookDays.Question(past, wantedC: 2 + (more % 400 / 100.0))).Word;
        Assert.False(stricter == OutlookWord.SprayDay && word != OutlookWord.SprayDay);
    }

    [Fact]
    public void Outlook_SpeaksOnlyWhereItWins()
    {
        DayOutlook outlook = OutlookComposer.Of(OutlookDays.Question(OutlookDays.Wetter(40)));
        Assert.All(outlook.Scores.Where(score => score.Horizon >= outlook.From && score.Horizon <= outlook.To), score => Assert.True(score.Wins));
        Assert.All(outlook.Band, point => Assert.InRange(TimeSpan.FromMinutes(point.Step * AirDay.SlotMinutes), outlook.From, outlook.To));
    }

    [Fact]
    public void SpokenRange_IsTheLongestRunOfWins()
    {
        bool[] wins = [true, false, true, true, true, false, true, true, false, false, false, false];
        HorizonScore[] scores = [.. wins.Select((win, i) => Score(OutlookScore.Horizons[i], win))];
        Assert.Equal((9, 18), OutlookComposer.SpokenRange(scores, 60));
        Assert.Equal((9, 12), OutlookComposer.SpokenRange(scores, 15));
        Assert.Equal((0, 0), OutlookComposer.SpokenRange([Score(3, false)], 60));
    }

    [Fact]
    public void WinInTheMargin_WithWorseChances_IsNoWin()
    {
        PairedDifference wins = PairedDifference.Of([.. Enumerable.Range(0, 12).Select(i => -1 - (0.1 * i))]);
        PairedDifference worse = PairedDifference.Of([.. Enumerable.Range(0, 12).Select(i => 0.01 * i)]);
        Assert.True(new HorizonScore(6, 1, 2, wins, 0.1, 0.2, wins).Wins);
        Assert.False(new HorizonScore(6, 1, 2, wins, 0.2, 0.1, worse).Wins);
        Assert.False(new HorizonScore(6, 1, 2, PairedDifference.Of([.. Enumerable.Range(0, 9).Select(i => -1 - (0.1 * i))]), 0.1, 0.2, wins).Wins);
    }

    private static HorizonScore Score(int step, bool win) =>
        new(step, 1, 2, PairedDifference.Of([.. Enumerable.Range(0, 12).Select(i => (win ? -1.0 : 1.0) * (1 + (0.1 * i)))]), 0, 0, default);
}
