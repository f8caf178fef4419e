using BoothWatch.Outlook;
using BoothWatch.Service.Outlook;
using BoothWatch.Service.Page;
using BoothWatch.Service.Sensors.Emulation;
using BoothWatch.Verdicts;
using Microsoft.Extensions.Options;
using Microsoft.Extensions.Time.Testing;

namespace BoothWatch.Service.Tests.Outlook;

public sealed class OutlookWordsTests
{
    private static readonly TimeZoneInfo Zurich = TimeZoneInfo.FindSystemTimeZoneById("Europe/Zurich");

    // 09:10 in Zurich on a day in summer.
    private static readonly OutlookTime Morning = new(new DateTimeOffset(2026, 6, 30, 7, 10, 0, TimeSpan.Zero), new DateOnly(2026, 6, 30), new TimeSpan(9, 10, 0));

    public static TheoryData<OutlookWord, double, double, double?, double?, double?, string, string> Words => new()
    {
        { OutlookWord.SprayDay, 10, 0.97, null, null, null, "Spray day", "the margin holds to the end of the day, 18:00, in nearly every such day; 8 h 50 min left at least" },
        { OutlookWord.SprayDay, 6, 0.93, null, null, null, "to 15:10 at least", "the margin holds to 15:10 in 9 of 10 such days; 6 h left at least" },
        { OutlookWord.MayClose, 10, 0.7, 3.2, null, null, "likely to 18:00", "the margin holds to the end of the day, 18:00, in 7 of 10 such days; it may close from 12:30" },
        { OutlookWord.Closes, 10, 0.2, 2.4, 3.8, 6, "until about 13:00", "the margin closes before 18:00 in 8 of 10 such days; it may close from 11:30; 3 h 50 min left (2 h 20 min to 6 h)" },
        { OutlookWord.Closes, 10, 0.2, 1, 1, 6, "less than 1 h", "the margin closes before 18:00 in 8 of 10 such days; it may close before 10:10" },
        { OutlookWord.Opens, 10, 0.8, 2.4, 4, 6, "from about 13:00", "the margin is too small now, and comes to suffice before 18:00 in 8 of 10 such days, from 11:30 at the earliest" },
        { OutlookWord.MayOpen, 10, 0.3, 4, null, null, "Perhaps later", "the margin is too small now, and comes to suffice before 18:00 in 3 of 10 such days, from 13:00 at the earliest" },
        { OutlookWord.NoSprayDay, 10, 0, null, null, null, "No spray day", "the margin is too small now, and comes to suffice before 18:00 in hardly any such day" },
    };

    [Theory]
    [MemberData(nameof(Words))]
    public void EachWord_HasItsMarkAndMeaning(OutlookWord word, double toH, double share, double? early, double? middle, double? late, string mark, string meaning)
    {
        OutlookState state = State(new DayOutlook
        {
            Word = word,
            MarginC = word is OutlookWord.NoSprayDay ? -1 : 4,
            From = TimeSpan.FromHours(1),
            To = TimeSpan.FromHours(toH),
            DayEnds = new TimeSpan(8, 50, 0),
            ShareAtEnd = share,
            Early = Hours(early),
            Middle = Hours(middle),
            Late = Hours(late),
            Days = 30,
        });
        OutlookWords words = Say();
        Assert.Equal(mark, words.Mark(state).Replace('\u00a0', ' '));
        Assert.StartsWith(meaning, words.Meaning(state).Replace('\u00a0', ' '), StringComparison.Ordinal);
    }

    [Fact]
    public void AMarginThatIsSmallButThere_IsNotCalledNoSprayDay() =>
        Assert.Equal("No full margin today", Say().Mark(State(new DayOutlook { Word = OutlookWord.NoSprayDay, MarginC = 1, To = TimeSpan.FromHours(8), DayEnds = TimeSpan.FromHours(8) })));

    [Theory]
    [InlineData(OutlookSilence.TooFewDays, "4 of the 15 days needed are on record at this time of day")]
    [InlineData(OutlookSilence.NoBetter, "on this shop’s record it does no better than ‘as it is now’")]
    [InlineData(OutlookSilence.AirUnknown, "the air of the booth is not known")]
    [InlineData(OutlookSilence.DayOver, "the working day is nearly over")]
    public void Silence_SaysPlainlyWhy_AndNeverSprayDay(OutlookSilence silence, string meaning)
    {
        OutlookState state = State(new DayOutlook { Silence = silence, Days = 4 });
        Assert.Equal(("No outlook", meaning, ""), (Say().Mark(state), Say().Meaning(state), Say().Basis(state)));
    }

    [Fact]
    public void BeforeTheFirst_ThereIsASentenceToo()
    {
        Assert.Equal("not worked out yet since the start", Say().Meaning(new OutlookState()));
        Assert.Equal(OutlookSilence.NotYet, OutlookAnswer.Of(new OutlookState(), Say(), new DegreeText(TemperatureUnit.Celsius)).Silence);
    }

    [Fact]
    public void AStep_IsSaidFirst_WithWhereTheBoothIsHeading()
    {
        OutlookState state = State(DayOutlook.SilentFor(OutlookSilence.NoBetter)) with { Step = new AirStep(true, 0.0021, 14.2) };
        Assert.Equal(
            "The air has just become damper outdoors, by 2.1 g of water a kg of air. The booth is heading for a dew point of 14.2 °C, and the outlook starts from there.",
            Say().Rest(state).First().Replace('\u00a0', ' '));
    }

    // Central European time goes back from 03:00 to 02:00 on 25 October 2026.
    [Fact]
    public void TimeAhead_OverTheEndOfSummerTime_IsThatOnTheWall()
    {
        OutlookTime evening = new(new DateTimeOffset(2026, 10, 24, 20, 0, 0, TimeSpan.Zero), new DateOnly(2026, 10, 24), TimeSpan.FromHours(22));
        Assert.Equal(TimeSpan.FromHours(3), Clock().TimeOfDayAfter(evening, TimeSpan.FromHours(6)));
    }

    private static OutlookWords Say() => new(Clock(), new DegreeText(TemperatureUnit.Celsius));

    private static OutlookClock Clock()
    {
        FakeTimeProvider time = new(Morning.Utc);
        time.SetLocalTimeZone(Zurich);
        return new OutlookClock(time, new ShopClock(time, Options.Create(new DemoOptions())), []);
    }

    private static OutlookState State(DayOutlook outlook) => new() { At = Morning, Outlook = outlook, RetarderPct = 5, IsLoaded = true };

    private static TimeSpan? Hours(double? hours) => hours is { } h ? TimeSpan.FromHours(h) : null;
}
