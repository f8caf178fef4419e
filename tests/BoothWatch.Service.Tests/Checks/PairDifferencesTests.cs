using BoothWatch.Service.Checks;

namespace BoothWatch.Service.Tests.Checks;

/// <summary>Two sensors that grow apart are told long before they disagree.</summary>
public sealed class PairDifferencesTests : IDisposable
{
    private readonly CheckShop _shop = new(withSpare: true);
    private readonly PairDifferences _differences;

    public PairDifferencesTests() => _differences = New();

    public void Dispose() => _shop.Dispose();

    [Fact]
    public void Of_TwoThatAgree_IsNothing()
    {
        Live(days: 2);
        Assert.Null(_differences.Of("boothAir"));
        Assert.Equal(48L * 2, _shop.Folder.Ask<long>("SELECT count(*) FROM sensor_difference")); // the hours that are over, of temperature and humidity
        Assert.InRange(_shop.Folder.Ask<double>("SELECT mean FROM sensor_difference WHERE quantity = 'booth_humidity_pct' LIMIT 1"), -1.02, -0.98);
    }

    // By hand: two parts of 2.07 % (k = 1) may differ by three times sqrt(2) x 2.07 = 8.8 %; half of it is 4.4 %.
    [Fact]
    public void Of_TwoThatGrowApart_IsSaidOfBoth_WhileTheReadingIsStillGood()
    {
        _shop.SparePct = 50.5;
        Live(days: 1);
        Assert.Equal(
            "boothAir reads 5.5 % less than boothAirCheck over the last week; from 8.8 % on they disagree, which means wait: check both",
            _differences.Of("boothAir")?.ToString());
        Assert.Equal(_differences.Of("boothAir"), _differences.Of("boothAirCheck"));
        Assert.True(_shop.Humidity.IsGood);
    }

    [Fact]
    public void Of_ASensorInTheJar_CountsNothing()
    {
        Live(days: 1);
        long before = _shop.Folder.Ask<long>("SELECT count(*) FROM sensor_difference");
        _shop.Begin();
        _shop.BoothPct = 11.3;
        Live(days: 1);
        Assert.InRange(_shop.Folder.Ask<long>("SELECT count(*) FROM sensor_difference"), before, before + 2); // the hour that had begun
        Assert.Null(_differences.Of("boothAir"));
    }

    [Fact]
    public void Of_AReplacedPart_BeginsAnew()
    {
        _shop.SparePct = 50.5;
        Live(days: 1);
        _shop.Book.Replace("boothAirCheck");
        _shop.SparePct = 46;
        Live(days: 1);
        Assert.Null(_differences.Of("boothAir"));
    }

    [Fact]
    public void Hour_AcrossARestart_IsOneRowWithBothParts()
    {
        _shop.Run(1);
        _differences.Take(_shop.Board.Take());
        PairDifferences second = New();
        second.Take(_shop.Board.Take());
        _shop.Time.Advance(TimeSpan.FromHours(1));
        _shop.Ask();
        _differences.Take(_shop.Board.Take());
        second.Take(_shop.Board.Take());
        Assert.Equal(2L, _shop.Folder.Ask<long>("SELECT max(count) FROM sensor_difference"));
    }

    private PairDifferences New() => new(_shop.Folder.Journal(), _shop.Folder.Location, _shop.Time);

    private void Live(int days)
    {
        for (int quarter = 0; quarter < days * 96; quarter++)
        {
            _shop.Time.Advance(TimeSpan.FromMinutes(15));
            _shop.Ask();
            _differences.Take(_shop.Board.Take());
        }
    }
}
