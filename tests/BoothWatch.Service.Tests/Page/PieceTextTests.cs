using BoothWatch.Service.Page;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Tests.Page;

public class PieceTextTests
{
    private static readonly TimeSpan HalfPastNine = new(9, 28, 0);

    private static PieceWarming Cold => Samples.Cold.Warming!;

    [Fact]
    public void Warming_HasTheMinutesTheClockAndTheRange()
    {
        PieceText text = Of(Cold);
        Assert.Equal(("warming", "25\u00a0min"), (text.Key, text.Mark));
        Assert.Equal("until it has 16.0\u00a0°C, at about 9:55 (15 to 40\u00a0min), if the air stays as it is", text.Meaning(HalfPastNine));
        Assert.Equal("By the model, until it has been watched for long enough.", text.Basis);
        Assert.Equal("0.6\u00a0°C under the dew point", text.Clearance);
    }

    [Fact]
    public void Warming_InFahrenheit_SpeaksIt()
    {
        PieceText text = new(Cold, new DegreeText(TemperatureUnit.Fahrenheit), isTyped: false);
        Assert.Contains("until it has 60.8\u00a0°F", text.Meaning(HalfPastNine), StringComparison.Ordinal);
        Assert.Equal("1.1\u00a0°F under the dew point", text.Clearance);
        Assert.Contains("about 6.1\u00a0°F colder", text.Care, StringComparison.Ordinal);
    }

    [Fact]
    public void Warming_OfATypedValue_AsksToMeasureAgain() =>
        Assert.Equal("By the model, from the value typed in: measure again then.", new PieceText(Cold, new DegreeText(TemperatureUnit.Celsius), isTyped: true).Basis);

    // The minutes would stand at "under 1 min" for as long as the value holds.
    [Fact]
    public void Warming_OfATypedValueWhoseTimeIsOver_AsksForAnother()
    {
        PieceText text = new(Cold with { LeftS = 0, LeastS = 0, MostS = 900 }, new DegreeText(TemperatureUnit.Celsius), isTyped: true);
        Assert.Equal(("warming", "Measure again"), (text.Key, text.Mark));
        Assert.Equal("by the model it may have 16.0\u00a0°C by now, and the value typed in is too old to tell", text.Meaning(HalfPastNine));
        Assert.Equal("By the model, from the value typed in.", text.Basis);
    }

    [Fact]
    public void Warming_OverMidnight_KeepsTheClock() =>
        Assert.Contains("at about 0:20", Of(Cold).Meaning(new TimeSpan(23, 55, 0)), StringComparison.Ordinal);

    [Fact]
    public void Care_NamesTheDewTheHeaterAndTheMiddle()
    {
        Assert.Contains("Dew is falling on it", Of(Cold).Care, StringComparison.Ordinal);
        Assert.Contains("not beside a heater or a flame", Of(Cold).Care, StringComparison.Ordinal);
        Assert.Contains("about 3.4\u00a0°C colder then and cools the film", Of(Cold).Care, StringComparison.Ordinal);
        PieceText dry = Of(Cold with { ClearanceC = 1, CoreColderC = 0.4 });
        Assert.DoesNotContain("Dew", dry.Care, StringComparison.Ordinal);
        Assert.DoesNotContain("middle", dry.Care, StringComparison.Ordinal);
    }

    [Fact]
    public void Care_InAirThatIsTooCold_SendsNobodyToWaitInIt()
    {
        string care = Of(Cold with { State = WarmingState.AirTooCold, LeftS = null, LeastS = null, MostS = null, Basis = null }).Care;
        Assert.Contains("no flame and no heater near vapour", care, StringComparison.Ordinal);
        Assert.DoesNotContain("blocks", care, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(5.0, "", "")]
    [InlineData(60.0, "Warm", "The piece is warm enough now.")]
    [InlineData(901.0, "", "")]
    [InlineData(null, "", "")]
    public void Warm_IsNewsForAQuarterOfAnHour(double? sinceS, string mark, string heard)
    {
        PieceText text = Of(Cold with { State = WarmingState.Warm, ClearanceC = 8, WarmSinceS = sinceS });
        Assert.Equal((mark, heard, ""), (text.Mark, text.Heard, text.Care));
        Assert.Equal(mark.Length > 0, text.Key == "warm");
    }

    [Fact]
    public void Nothing_Known_IsNeitherShownNorHeard()
    {
        PieceText text = Of(null);
        Assert.Equal(("", "", "", "", ""), (text.Key, text.Mark, text.Heard, text.Care, text.Meaning(HalfPastNine)));
        Assert.Equal("surface", text.Clearance);
        Assert.Equal("", Of(Cold with { State = WarmingState.Unknown }).Heard);
    }

    [Fact]
    public void View_OfAStaleState_SaysNothingOfThePiece()
    {
        CurrentState old = new(3, Samples.Cold, TimeSpan.FromSeconds(9));
        PageView view = PageView.Of(old, Samples.Sources, new DegreeText(TemperatureUnit.Celsius), TimeProvider.System);
        Assert.Equal(("", "", ""), (view.Warming, view.Fields["warm"], view.Fields["warmHeard"]));
        Assert.Null(NowAnswer.Of(old, Samples.Sources).Warming);
    }

    private static PieceText Of(PieceWarming? warming) => new(warming, new DegreeText(TemperatureUnit.Celsius), isTyped: false);
}
