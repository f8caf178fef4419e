using BoothWatch.Checks;
using BoothWatch.Readings;
using BoothWatch.Service.Checks;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Tests.Checks;

/// <summary>A hold is on a part, and the configuration may give a part another name while it is in the jar or after it has failed.</summary>
public sealed class MovedPartTests : IDisposable
{
    private readonly CheckShop _shop = new(withSpare: true);

    public void Dispose() => _shop.Dispose();

    // The jar of 11 % must not come in through the name of the sensor that may stand in.
    [Fact]
    public void NamesSwapped_WhileOneIsInTheJar_HoldsBothUntilEachIsSaidToBeBack()
    {
        _shop.Run(2);
        _shop.Begin();
        _shop.BoothPct = SaltPoint.LithiumChloride.HumidityPct(22);
        _shop.Run(10);
        _shop.SwapNames();
        _shop.Restart();
        _shop.Run(60, Verdict.Wait);
        _shop.Book.SayBack("boothAir", cancelled: true, certain: false);
        _shop.Run(60, Verdict.Wait);
        Assert.Null(_shop.Running());
        _shop.Restart();
        _shop.Run(60, Verdict.Wait);
        _shop.BoothPct = 47;
        _shop.Book.SayBack("boothAirCheck", cancelled: true, certain: false);
        _shop.Run(31);
        Assert.Equal(Verdict.Spray, _shop.Verdict);
        _shop.Restart();
        Assert.Equal(Verdict.Spray, _shop.Verdict);
    }

    [Fact]
    public void NamesSwapped_AfterOneHasFailed_TheFailedPartIsNotUsedUntilReplaced()
    {
        _shop.Run(2);
        _shop.CheckOver(SaltPoint.SodiumChloride, 7, best: Verdict.Spray);
        _shop.SwapNames();
        _shop.Restart();
        _shop.Run(5, Verdict.Wait);
        Assert.Equal(ReadingQuality.FailedCheck, _shop.Book.Holds.Of("boothAirCheck")?.Quality);
        _shop.Book.Replace("boothAirCheck");
        Assert.Equal(Verdict.Spray, _shop.Verdict);
        _shop.Restart();
        Assert.Null(_shop.Book.Holds.Of("boothAirCheck"));
        Assert.Equal(ReadingQuality.FailedCheck, _shop.Book.Holds.Of("boothAir")?.Quality); // by its name, until somebody says that it is another
    }

    [Fact]
    public void AllPartsMadeReal_WhileOneThatWasProvedIsInTheJar_HoldsOnOnce()
    {
        _shop.WhileProving().Begin("boothAir", spareMayStandIn: true);
        _shop.BoothPct = SaltPoint.LithiumChloride.HumidityPct(22);
        _shop.Restart();
        _shop.Run(60, Verdict.Wait);
        _shop.Restart();
        _shop.BoothPct = 46;
        _shop.Run(60, Verdict.Wait);
        _shop.Book.SayBack("boothAir", cancelled: true, certain: false);
        _shop.Run(31);
        Assert.Equal(Verdict.Spray, _shop.Verdict);
        _shop.Restart();
        Assert.Equal(Verdict.Spray, _shop.Verdict);
    }

    [Fact]
    public void AllPartsMadeReal_TheHoldsOfEmulatedOnesStayWithTheDemo()
    {
        HoldFile demo = new(new JournalLocation(Path.Combine(_shop.Folder.Folder, JournalLocation.DemoFileName), IsDemo: true));
        HoldLine emulated = new("boothAir", ReadingQuality.BeingChecked, _shop.Time.GetUtcNow(), false) { Part = "part of the demo (emulated)" };
        demo.Write([emulated]);
        _shop.Restart();
        Assert.Null(_shop.Running());
        Assert.Equal(emulated, Assert.Single(demo.Read()!));
    }

    [Fact]
    public void AllPartsMadeReal_WithAnUnreadableFileOfTheDemo_HoldsAllOnce()
    {
        string demo = Path.Combine(_shop.Folder.Folder, "demo.holds.json");
        File.WriteAllText(demo, "[{");
        _shop.Restart();
        Assert.NotNull(_shop.Running());
        Assert.NotNull(_shop.Running("boothAirCheck"));
        Assert.Equal("[]", File.ReadAllText(demo));
        _shop.Restart();
        Assert.NotNull(_shop.Running());
    }
}
