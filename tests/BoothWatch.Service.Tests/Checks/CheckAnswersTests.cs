using BoothWatch.Checks;
using BoothWatch.Service.Checks;
using BoothWatch.Service.Coat;
using BoothWatch.Verdicts;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Tests.Checks;

/// <summary>What the page says of a sensor over the months.</summary>
public sealed class CheckAnswersTests : IDisposable
{
    private readonly CheckShop _shop = new();

    public void Dispose() => _shop.Dispose();

    private CheckAnswers Answers => AnswersOf(_shop);

    private ChecksSensor Sensor => Answers.Now().Sensors.Single();

    [Fact]
    public void Sensor_NeverChecked_IsDue_AndTheGlanceSaysSo()
    {
        Assert.Equal(("in-use", "No check on record", true), (Sensor.State, Sensor.Headline, Sensor.IsDue));
        Assert.Equal("check due (no check on record)", Answers.Reminder("boothAir"));
        Assert.Null(Answers.Reminder("rest"));
    }

    [Fact]
    public void Sensor_CheckedAndGood_IsDueAfterSixMonthsAndNotBefore()
    {
        _shop.CheckOver(SaltPoint.SodiumChloride, 0.5);
        Assert.Equal(("Checked 25 Nov 2026: within tolerance", false), (Sensor.Headline, Sensor.IsDue));
        Assert.Equal(CheckOutcome.Within, Sensor.Outcome);
        Assert.Null(Answers.Reminder("boothAir"));
        _shop.Time.SetUtcNow(new DateTimeOffset(2027, 5, 25, 11, 0, 0, TimeSpan.Zero));
        Assert.False(Sensor.IsDue);
        _shop.Time.SetUtcNow(new DateTimeOffset(2027, 5, 25, 12, 0, 0, TimeSpan.Zero));
        Assert.True(Sensor.IsDue);
        Assert.Equal("check due (due since 25 May 2027: last checked 25 Nov 2026)", Answers.Reminder("boothAir"));
    }

    [Fact]
    public void Sensor_ThatIsAnotherPartThanTheOneChecked_IsDue()
    {
        using CheckShop shop = new(withSpare: true);
        shop.Run(2);
        shop.CheckOver(SaltPoint.SodiumChloride, 0.5, best: Verdict.Spray);
        Assert.False(AnswersOf(shop).Now().Sensors[0].IsDue);
        shop.SwapNames();
        shop.Restart();
        ChecksSensor sensor = AnswersOf(shop).Now().Sensors[0];
        Assert.Equal(("boothAir", "Checked 25 Nov 2026 was boothAir of a test: check this one", true), (sensor.Name, sensor.Headline, sensor.IsDue));
        shop.Book.Replace("boothAir");
        Assert.StartsWith("New since", AnswersOf(shop).Now().Sensors[0].Headline, StringComparison.Ordinal);
    }

    [Fact]
    public void Sensor_TooCloseToTell_StaysInUse_AndIsToBeCheckedAgain()
    {
        _shop.CheckOver(SaltPoint.SodiumChloride, 3);
        Assert.Equal(("in-use", "Checked 25 Nov 2026: cannot tell, check it again"), (Sensor.State, Sensor.Headline));
        Assert.Equal("check due (checked 25 Nov 2026: cannot tell, check it again)", Answers.Reminder("boothAir"));
        Assert.True(_shop.Humidity.IsGood);
    }

    [Fact]
    public void Sensor_ThatDrifts_SaysHowFast_AndIsDueSooner()
    {
        _shop.CheckOver(SaltPoint.SodiumChloride, -1.5);
        _shop.Time.SetUtcNow(new DateTimeOffset(2027, 5, 25, 9, 0, 0, TimeSpan.Zero));
        _shop.Restart();
        _shop.CheckOver(SaltPoint.SodiumChloride, 2);
        Assert.InRange(Sensor.DriftPctPerYear!.Value, 6.9, 7.2); // 3.5 % in 181 days
        Assert.Contains(Sensor.Words, words => words.StartsWith("Drift over sodium chloride: +7.1 % ± ", StringComparison.Ordinal));
        Assert.InRange((Sensor.Due!.Value - _shop.Time.GetUtcNow()).TotalDays, 29, 60); // 1.6 % left, half of it used up in 41 days
        Assert.Equal(2, Sensor.Past.Count);
    }

    [Fact]
    public void Sensor_InTheJar_SaysWhatItReadsAndWhyNotYet()
    {
        _shop.Run(1);
        _shop.Begin();
        _shop.BoothPct = 70;
        _shop.Book.PutInJar("boothAir", SaltPoint.SodiumChloride);
        _shop.Run(1);
        ChecksRunning running = Sensor.Running!;
        Assert.Equal(("being-checked", "in-jar", "sodium-chloride", false, 75.4), (Sensor.State, running.Stage, running.Salt, running.Settled, running.ReferencePct));
        Assert.Equal(70, running.ReadPct!.Value, 0);
        Assert.Equal("steady so far, 2 h to go", running.NotYet);
        Assert.Null(Answers.Reminder("boothAir"));
    }

    [Fact]
    public void Sensor_OfTwoSalts_ShowsBoth_TheWorseOneCounts()
    {
        _shop.CheckOver(SaltPoint.MagnesiumChloride, 0.2);
        _shop.CheckOver(SaltPoint.SodiumChloride, 6);
        Assert.Equal(2, Sensor.Last.Count);
        Assert.Equal((CheckOutcome.Outside, "failed-check"), (Sensor.Outcome, Sensor.State));
        Assert.Contains(Sensor.Words, words => words.StartsWith("Both salts together: +", StringComparison.Ordinal));
    }

    [Fact]
    public void Sensor_WhoseEndCannotBeKept_SaysWhyItIsStillHeld()
    {
        _shop.Begin();
        _shop.BoothPct = 50;
        _shop.Book.SayBack("boothAir", cancelled: true, certain: false);
        File.Delete(_shop.File.FilePath);
        Directory.CreateDirectory(_shop.File.FilePath);
        _shop.Run(60, Verdict.Wait);
        ChecksRunning running = Sensor.Running!;
        Assert.False(running.Settled);
        Assert.StartsWith($"{_shop.File.FilePath} cannot be written: ", running.NotYet, StringComparison.Ordinal);
        Directory.Delete(_shop.File.FilePath);
        _shop.Run(1);
        Assert.Null(Sensor.Running);
        Assert.Equal(Verdict.Spray, _shop.Verdict);
    }

    private static CheckAnswers AnswersOf(CheckShop shop) => new(
        shop.Book, new PairDifferences(shop.Folder.Journal(), shop.Folder.Location, shop.Time), CheckLimits.Of(new ChecksOptions()), shop.Book.Sensors, Options.Create(new ChecksOptions()), Options.Create(new BoothOptions()), shop.Time);
}
