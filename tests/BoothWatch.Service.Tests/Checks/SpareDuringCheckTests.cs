using BoothWatch.Checks;
using BoothWatch.Readings;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Tests.Checks;

/// <summary>A second sensor of the booth air carries on while one is checked, if the two agreed, and only then.</summary>
public sealed class SpareDuringCheckTests : IDisposable
{
    private readonly CheckShop _shop = new(withSpare: true);

    public void Dispose() => _shop.Dispose();

    [Fact]
    public void Check_OfTheFirst_TheSecondThatAgreedCarriesOn_AlsoAfterARestart()
    {
        _shop.Run(2);
        _shop.Begin();
        _shop.BoothPct = 11.3;
        _shop.Run(30);
        Assert.Equal(Verdict.Spray, _shop.Verdict);
        Assert.Equal(("boothAirCheck", true), (_shop.Humidity.Sensor, _shop.Humidity.IsGood));
        Assert.InRange(_shop.Humidity.Value!.Value, 45.9, 46.1);

        _shop.Restart();
        _shop.Run(1);
        Assert.Equal("boothAirCheck", _shop.Humidity.Sensor);
        Assert.InRange(_shop.Assessment.Air!.RelativeHumidityPct, 45.9, 46.1);
    }

    [Fact]
    public void Check_OfTheSecond_LeavesTheFirst()
    {
        _shop.Run(2);
        _shop.Begin("boothAirCheck");
        _shop.SparePct = 84;
        _shop.Run(30);
        Assert.Equal(("boothAir", true), (_shop.Humidity.Sensor, _shop.Humidity.IsGood));
        Assert.Equal(ReadingQuality.BeingChecked, _shop.Board.Take().Others.First(reading => reading.Quantity == Quantity.BoothHumidity).Quality);
    }

    // Two that disagree mean wait. Taking one of them away must not turn that into trust in the other.
    [Theory]
    [InlineData("boothAir")]
    [InlineData("boothAirCheck")]
    public void Check_WhileTheTwoDisagree_IsWaitWhicheverIsTaken(string taken)
    {
        _shop.SparePct = 70;
        _shop.Run(2);
        Assert.Equal(ReadingQuality.Disagreeing, _shop.Humidity.Quality);
        _shop.Begin(taken);
        Assert.Equal(Verdict.Wait, _shop.Verdict);
        _shop.Run(60, Verdict.Wait);
        _shop.Restart();
        _shop.Run(60, Verdict.Wait);
    }

    [Fact]
    public void Check_BegunBeforeTheDisagreementCountedAsOne_IsWaitAsWell()
    {
        _shop.Run(2);
        _shop.SparePct = 70;
        _shop.Run(0.5);
        Assert.True(_shop.Humidity.IsGood);
        _shop.Begin();
        _shop.Run(10, Verdict.Wait);
    }

    [Fact]
    public void Check_OfBoth_IsWait()
    {
        _shop.Run(2);
        _shop.Begin();
        _shop.Begin("boothAirCheck");
        _shop.Run(10, Verdict.Wait);
    }

    [Fact]
    public void Failed_TheFirst_TheSecondIsUsedInItsPlace()
    {
        _shop.Run(2);
        _shop.CheckOver(SaltPoint.SodiumChloride, 7, best: Verdict.Spray);
        Assert.Equal(("boothAirCheck", true), (_shop.Humidity.Sensor, _shop.Humidity.IsGood));
        Assert.Equal("boothAir", _shop.Board.Take()[Quantity.BoothTemperature].Sensor); // its temperature was not what failed
        Assert.Equal(ReadingQuality.FailedCheck, _shop.Board.Take().Others.Single(reading => reading is { Quantity: Quantity.BoothHumidity, Sensor: "boothAir" }).Quality);
    }

    [Fact]
    public void Check_OfTheFirst_WhileTheSecondHasNotAnswered_IsWait()
    {
        _shop.Begin(); // nothing was read yet, so nobody knows whether the two agree
        _shop.Run(10, Verdict.Wait);
    }
}
