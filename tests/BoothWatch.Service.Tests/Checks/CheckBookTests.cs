using BoothWatch.Checks;
using BoothWatch.Readings;
using BoothWatch.Service.Checks;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Tests.Outputs.Series;
using BoothWatch.Verdicts;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Tests.Checks;

/// <summary>The heart of it: a sensor in a jar of 11 % must never say spray, whatever happens to the program or is forgotten.</summary>
public sealed class CheckBookTests : IDisposable
{
    private readonly CheckShop _shop = new();

    public void Dispose() => _shop.Dispose();

    [Fact]
    public void Check_FromBeginningToEnd_NeverSaysSpray_AndThenDoes()
    {
        _shop.Run(1);
        Assert.Equal(Verdict.Spray, _shop.Verdict);

        _shop.Begin();
        Assert.Equal(Verdict.Wait, _shop.Verdict); // at once, and not with the next reading
        Assert.Equal(ReadingQuality.BeingChecked, _shop.Humidity.Quality);
        Assert.Equal("being checked against a salt point since 25 Nov, 09:01", _shop.Humidity.Cause?.ToString());
        Reason reason = _shop.Assessment.Reasons[0];
        Assert.Equal("no booth temperature and humidity (being checked against a salt point since 25 Nov, 09:01)", reason.Finding);
        Assert.Equal("wait, and finish the check of sensor boothAir on the page Sensor checks", reason.Action);
        _shop.Run(5, Verdict.Wait);

        _shop.BoothPct = SaltPoint.LithiumChloride.HumidityPct(22) + 0.4;
        _shop.Book.PutInJar("boothAir", SaltPoint.LithiumChloride);
        _shop.Run(119, Verdict.Wait);
        Assert.Contains("not yet: steady so far", Assert.Throws<CheckRefusedException>(() => _shop.Book.TakeResult("boothAir")).Message, StringComparison.Ordinal);
        _shop.Run(2, Verdict.Wait);
        _shop.Book.TakeResult("boothAir");
        _shop.Run(1, Verdict.Wait);

        _shop.BoothPct = 47;
        _shop.Book.SayBack("boothAir", cancelled: false, certain: false);
        Assert.Equal(Verdict.Wait, _shop.Verdict);
        _shop.Run(9.5, Verdict.Wait);
        _shop.Run(1);
        Assert.Equal(Verdict.Spray, _shop.Verdict);
        Assert.Null(_shop.Running());
        Assert.Empty(_shop.File.Read()!);

        DatedResult result = Assert.Single(_shop.History().Results);
        Assert.Equal(0.4, result.Result.DeviationPct, 1);
        Assert.Equal(CheckOutcome.Within, result.Result.Outcome);
        Assert.Equal(3.59, result.Result.TolerancePct, 2); // ± 3.5 % and 0.8 % of hysteresis, the part's data sheet
    }

    // A check may be begun and forgotten, and the program killed or stopped, at every step of it.
    [Theory]
    [InlineData("begun")]
    [InlineData("in jar")]
    [InlineData("result taken")]
    [InlineData("back, not settled")]
    public void Restart_AtAnyStep_StaysWaitFromTheFirstReadingOn(string until)
    {
        _shop.Run(1);
        _shop.Begin();
        if (until != "begun")
        {
            _shop.BoothPct = SaltPoint.LithiumChloride.HumidityPct(22);
            _shop.Book.PutInJar("boothAir", SaltPoint.LithiumChloride);
            _shop.Run(121, Verdict.Wait);
        }

        if (until is "result taken" or "back, not settled")
        {
            _shop.Book.TakeResult("boothAir");
        }

        if (until == "back, not settled")
        {
            _shop.BoothPct = 47;
            _shop.Book.SayBack("boothAir", cancelled: false, certain: false);
            _shop.Run(9, Verdict.Wait);
        }

        _shop.Restart();
        Assert.Equal(Verdict.Wait, _shop.Verdict);
        Assert.Equal(ReadingQuality.BeingChecked, _shop.Humidity.Quality);
        if (until == "back, not settled")
        {
            _shop.Run(9.5, Verdict.Wait); // the time begins anew
            _shop.Run(1);
            Assert.Equal(Verdict.Spray, _shop.Verdict);
        }
        else
        {
            _shop.Run(60 * 24 * 3, Verdict.Wait); // forgotten over three days
            _shop.BoothPct = 47;
            _shop.Book.SayBack("boothAir", cancelled: false, certain: false);
            _shop.Run(31);
            Assert.Equal(Verdict.Spray, _shop.Verdict);
        }
    }

    [Fact]
    public void JournalSetAside_WhileTheSensorIsInTheJar_StaysWait()
    {
        _shop.Run(1);
        _shop.Begin();
        SetJournalAside();
        _shop.BoothPct = 11.3;
        _shop.Restart();
        Assert.Equal(Verdict.Wait, _shop.Verdict);
        _shop.Run(120, Verdict.Wait);
        _shop.BoothPct = 47;
        _shop.Book.SayBack("boothAir", cancelled: false, certain: false);
        _shop.Run(31);
        Assert.Equal(Verdict.Spray, _shop.Verdict);
    }

    [Fact]
    public void HoldFileLost_WhileTheJournalKnows_StaysWait()
    {
        _shop.Begin();
        File.Delete(_shop.File.FilePath);
        _shop.Restart();
        Assert.Equal(Verdict.Wait, _shop.Verdict);
    }

    [Theory]
    [InlineData("")]
    [InlineData("[{\"sensor\":\"boothAir\"")]
    [InlineData("null")]
    [InlineData("[null]")]
    [InlineData("[{}]")]
    public void HoldFileUnreadable_NobodyKnows_SoEverySensorIsHeldUntilSomebodySaysItHangsThere(string text)
    {
        File.WriteAllText(_shop.File.FilePath, text);
        _shop.BoothPct = 11.3;
        _shop.Restart();
        Assert.Equal(Verdict.Wait, _shop.Verdict);
        _shop.BoothPct = 47;
        _shop.Run(60, Verdict.Wait);
        _shop.Book.SayBack("boothAir", cancelled: false, certain: false);
        _shop.Run(31);
        Assert.Equal(Verdict.Spray, _shop.Verdict);
        Assert.True(Assert.Single(_shop.History().Checks).IsCancelled);
    }

    [Fact]
    public void Journal_ThatCannotBeRead_LeavesTheHoldsOfTheFile()
    {
        _shop.Begin();
        SetJournalAside();
        File.WriteAllText(_shop.Folder.Location.Path, "this is no database, and longer than the header of one: " + new string('x', 200));
        _shop.Restart();
        Assert.NotNull(_shop.Book.Trouble);
        Assert.Equal(Verdict.Wait, _shop.Verdict);
    }

    [Fact]
    public void Begin_ThatCannotBeKept_BeginsNothing_AndSaysSo()
    {
        _shop.Run(1);
        Directory.CreateDirectory(_shop.File.FilePath); // in the place of the file
        Assert.Contains("cannot be written", Assert.Throws<JournalException>(() => _shop.Begin()).Message, StringComparison.Ordinal);
        Assert.Null(_shop.Running());
        Assert.Equal(Verdict.Spray, _shop.Verdict);
        Assert.Empty(_shop.History().Checks);
    }

    // What ends it is one transaction in the journal and one file; a crash between them leaves the sensor held, and it only settles once more.
    [Fact]
    public void CrashBetweenJournalAndFile_HoldsOn_ThenFreesWithoutASecondEnd()
    {
        _shop.CheckOver(SaltPoint.SodiumChloride, 0.5);
        Assert.Equal(Verdict.Spray, _shop.Verdict);
        PastCheck check = _shop.History().Checks.Single();
        _shop.File.Write([new HoldLine("boothAir", ReadingQuality.BeingChecked, check.Begun, false)]);
        _shop.Restart();
        Assert.Equal(Verdict.Wait, _shop.Verdict);
        _shop.Run(9, Verdict.Wait);
        _shop.Run(2);
        Assert.Equal(Verdict.Spray, _shop.Verdict);
        Assert.Equal(1L, _shop.Folder.Ask<long>("SELECT count(*) FROM sensor_check_entry WHERE kind = 'ended'"));
    }

    [Fact]
    public void Back_SaidWhileItIsStillInTheJar_IsNotBelieved_UntilSomebodyHasLooked()
    {
        _shop.Begin();
        _shop.BoothPct = SaltPoint.LithiumChloride.HumidityPct(22);
        _shop.Book.PutInJar("boothAir", SaltPoint.LithiumChloride);
        _shop.Run(121, Verdict.Wait);
        _shop.Book.TakeResult("boothAir");
        _shop.Book.SayBack("boothAir", cancelled: false, certain: false);
        _shop.Run(300, Verdict.Wait);
        Assert.True(_shop.Running()!.ReadsAsInJar);

        // The shop has 11 % on a frosty day: somebody looks, and says so.
        _shop.Book.SayBack("boothAir", cancelled: false, certain: true);
        _shop.Run(1);
        Assert.Null(_shop.Running());
    }

    [Fact]
    public void Cancelled_BeforeAnyJarIsOnRecord_AsksWhereTheReadingIsThatOfASalt()
    {
        _shop.Begin();
        _shop.BoothPct = 33; // in a jar that nobody told of
        _shop.Book.SayBack("boothAir", cancelled: true, certain: false);
        _shop.Run(300, Verdict.Wait);
        _shop.BoothPct = 50;
        _shop.Run(31);
        Assert.Null(_shop.Running());
        Assert.True(_shop.History().Checks.Single().IsCancelled);
    }

    [Fact]
    public void Back_FromADampJar_TakesLonger_AndACreepingReadingLongerStill()
    {
        _shop.Begin();
        _shop.BoothPct = SaltPoint.PotassiumChloride.HumidityPct(22);
        _shop.Book.PutInJar("boothAir", SaltPoint.PotassiumChloride);
        _shop.Run(121, Verdict.Wait);
        _shop.Book.TakeResult("boothAir");
        _shop.Book.SayBack("boothAir", cancelled: false, certain: false);
        for (int minute = 0; minute < 60; minute++)
        {
            _shop.BoothPct = 50 - (minute * 0.1); // 3 % in half an hour
            _shop.Run(1, Verdict.Wait);
        }

        _shop.Run(14, Verdict.Wait); // of the last half hour a quarter must be over before only 1.5 % of creep are left in it
        _shop.Run(3);
        Assert.Null(_shop.Running());
    }

    [Fact]
    public void SilentSensor_InTheJar_GivesNoResult_AndIsNotFreed()
    {
        _shop.Begin();
        _shop.BoothPct = 75.4;
        _shop.Book.PutInJar("boothAir", SaltPoint.SodiumChloride);
        _shop.Run(121, Verdict.Wait);
        _shop.BoothIsSilent = true;
        _shop.Run(1, Verdict.Wait);
        Assert.Equal("not yet: no reading", Assert.Throws<CheckRefusedException>(() => _shop.Book.TakeResult("boothAir")).Message);
        _shop.Book.SayBack("boothAir", cancelled: false, certain: true);
        _shop.Run(60, Verdict.Wait);
        Assert.NotNull(_shop.Running());
    }

    [Fact]
    public void Failed_ASensorOutOfTolerance_StaysWaitAcrossRestarts_UntilReplaced()
    {
        _shop.CheckOver(SaltPoint.SodiumChloride, 7);
        Assert.Null(_shop.Running());
        Assert.Equal(Verdict.Wait, _shop.Verdict);
        Reason reason = _shop.Assessment.Reasons[0];
        Assert.Equal("no booth humidity (out of tolerance over a salt point on 25 Nov, 11:01)", reason.Finding);
        Assert.Equal("wait, and replace sensor boothAir, or check it again", reason.Action);
        Assert.True(_shop.Board.Take()[Quantity.BoothTemperature].IsGood); // the salt says nothing of the temperature

        _shop.Restart();
        _shop.Run(60, Verdict.Wait);
        _shop.Book.Replace("boothAir");
        Assert.Equal(Verdict.Spray, _shop.Verdict);
        Assert.Empty(_shop.History().Results);
        Assert.Single(_shop.History().Checks); // kept

        _shop.Restart();
        Assert.Equal(Verdict.Spray, _shop.Verdict);
    }

    [Fact]
    public void Failed_ThenCheckedAgainOverTheSameSaltAndWithin_IsUsed_OverAnotherItIsNot()
    {
        _shop.CheckOver(SaltPoint.SodiumChloride, 7);
        _shop.CheckOver(SaltPoint.MagnesiumChloride, 0);
        Assert.Equal(Verdict.Wait, _shop.Verdict);
        _shop.CheckOver(SaltPoint.SodiumChloride, 0.3);
        Assert.Equal(Verdict.Spray, _shop.Verdict);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Failed_AndTheJournalSetAside_StaysWaitUntilReplacedOrWithinOverTheSameSalt(bool replace)
    {
        _shop.CheckOver(SaltPoint.SodiumChloride, 7);
        SetJournalAside();
        _shop.Restart();
        Assert.Equal(Verdict.Wait, _shop.Verdict);

        // Neither a check that was given up nor one over another salt frees it, before or after one more restart.
        _shop.Begin();
        _shop.Book.SayBack("boothAir", cancelled: true, certain: false);
        _shop.Run(31);
        Assert.Null(_shop.Running());
        Assert.Equal(Verdict.Wait, _shop.Verdict);
        _shop.CheckOver(SaltPoint.MagnesiumChloride, 0);
        Assert.Equal(Verdict.Wait, _shop.Verdict);
        _shop.Restart();
        Assert.Equal(Verdict.Wait, _shop.Verdict);
        if (replace)
        {
            _shop.Book.Replace("boothAir");
        }
        else
        {
            _shop.CheckOver(SaltPoint.SodiumChloride, 0);
        }

        Assert.Equal(Verdict.Spray, _shop.Verdict);
        _shop.Restart();
        Assert.Equal(Verdict.Spray, _shop.Verdict);
    }

    [Fact]
    public void Failed_AndTheJournalSetAsideBeforeItIsBack_StaysWait()
    {
        _shop.TakeResult(SaltPoint.SodiumChloride, 83);
        SetJournalAside();
        _shop.Restart();
        _shop.BoothPct = 45;
        _shop.Book.SayBack("boothAir", cancelled: false, certain: false);
        _shop.Run(60, Verdict.Wait);
        Assert.Null(_shop.Running());
        Assert.Equal(ReadingQuality.FailedCheck, _shop.Humidity.Quality);
    }

    [Fact]
    public void Failed_ThenCancelled_IsUsed_AlsoAfterARestart()
    {
        _shop.TakeResult(SaltPoint.SodiumChloride, 60);
        _shop.Restart();
        _shop.BoothPct = 45;
        _shop.Book.SayBack("boothAir", cancelled: true, certain: false);
        _shop.Run(31);
        Assert.Equal(Verdict.Spray, _shop.Verdict);
        _shop.Restart();
        Assert.Equal(Verdict.Spray, _shop.Verdict);
    }

    [Fact]
    public void Cancelled_ResultsDoNotCount_AndAreKept()
    {
        _shop.TakeResult(SaltPoint.SodiumChloride, 60); // the lid was open
        _shop.BoothPct = 45;
        _shop.Book.SayBack("boothAir", cancelled: true, certain: false);
        _shop.Run(31);
        Assert.Equal(Verdict.Spray, _shop.Verdict);
        Assert.Empty(_shop.History().Results);
        PastCheck check = Assert.Single(_shop.History().Checks);
        Assert.True(check.IsCancelled);
        Assert.Equal(CheckOutcome.Outside, Assert.Single(check.Results).Result.Outcome);
    }

    [Fact]
    public void Steps_ThatDoNotFit_AreRefused_AndChangeNothing()
    {
        Assert.Contains("begin one first", Assert.Throws<CheckRefusedException>(() => _shop.Book.PutInJar("boothAir", SaltPoint.SodiumChloride)).Message, StringComparison.Ordinal);
        Assert.Contains("give one of boothAir", Assert.Throws<CheckRefusedException>(() => _shop.Book.Begin("rest", false)).Message, StringComparison.Ordinal);
        _shop.Begin();
        Assert.Contains("runs already", Assert.Throws<CheckRefusedException>(() => _shop.Begin()).Message, StringComparison.Ordinal);
        Assert.Contains("in no jar", Assert.Throws<CheckRefusedException>(() => _shop.Book.TakeResult("boothAir")).Message, StringComparison.Ordinal);
        Assert.Contains("finish it first", Assert.Throws<CheckRefusedException>(() => _shop.Book.Replace("boothAir")).Message, StringComparison.Ordinal);
        Assert.Equal(1L, _shop.Folder.Ask<long>("SELECT count(*) FROM sensor_check_entry"));
    }

    [Fact]
    public void Entries_OfTheJournal_RefuseEditsAndRemovals()
    {
        _shop.Begin();
        Assert.Throws<SqliteException>(() => _shop.Folder.Ask<long>("UPDATE sensor_check_entry SET sensor = 'x' RETURNING id"));
        Assert.Throws<SqliteException>(() => _shop.Folder.Ask<long>("DELETE FROM sensor_check_entry RETURNING id"));
    }

    [Fact]
    public async Task Journal_WhileASensorIsInTheJar_CountsNothingOfItAsBoothAir()
    {
        SeriesOutput series = _shop.Folder.Output();
        _shop.Run(1);
        _shop.Begin();
        _shop.BoothPct = 11.3;
        _shop.Run(2, Verdict.Wait);
        await series.HandleAsync(_shop.Assessment, CancellationToken.None);
        Assert.Equal(0L, _shop.Folder.Ask<long>("SELECT booth_humidity_pct_n + booth_temperature_c_n + dew_point_c_n FROM minute ORDER BY minute_ms DESC LIMIT 1"));
        Assert.StartsWith("KK", _shop.Folder.Ask<string>("SELECT quality FROM reading ORDER BY id DESC LIMIT 1"), StringComparison.Ordinal);
        using SqliteConnection connection = _shop.Folder.Look();
        MinuteCheck.EqualsRecomputation(connection);
    }

    // A page that was loaded before the next jar still offers the second answer; only who was asked to look again can give it.
    [Fact]
    public void Back_SaidTwiceByAPageThatIsOlderThanTheJar_IsAskedAgain()
    {
        _shop.Begin();
        _shop.BoothPct = SaltPoint.LithiumChloride.HumidityPct(22);
        _shop.Book.PutInJar("boothAir", SaltPoint.LithiumChloride);
        _shop.Run(10, Verdict.Wait);
        _shop.Book.SayBack("boothAir", cancelled: false, certain: true);
        _shop.Run(60, Verdict.Wait);
        Assert.True(_shop.Running()!.ReadsAsInJar);
        _shop.Restart();
        _shop.Run(60, Verdict.Wait);
    }

    // The clock stood years ahead, or back, while an earlier result was taken: what happened last counts.
    [Theory]
    [InlineData(-10, -300)]
    [InlineData(400, -300)]
    public void Failed_WithTheClockSetMeanwhile_StaysWaitUntilReplaced(int goodDays, int badDays)
    {
        Enter(goodDays, 0);
        Enter(goodDays + badDays, 7);
        _shop.Restart();
        Assert.Equal(Verdict.Wait, _shop.Verdict);
        _shop.Book.Replace("boothAir");
        Assert.Equal(Verdict.Spray, _shop.Verdict);
        _shop.Restart();
        Assert.Equal(Verdict.Spray, _shop.Verdict);
        Enter(badDays - 900, 7); // of the new part, dated before it was fitted
        _shop.Restart();
        Assert.Equal(Verdict.Wait, _shop.Verdict);

        void Enter(int days, double offPct)
        {
            CheckStore store = new(_shop.Folder.Journal(), _shop.Folder.Location);
            DateTimeOffset at = _shop.Time.GetUtcNow().AddDays(days);
            CheckEntry begun = store.Add(null, "boothAir", at, CheckStep.Begun, new CheckFields());
            CheckResult result = new("sodium-chloride", 22, 75.4, 75.4 + offPct, 1.1, 3.6);
            store.Add(begun.CheckId, "boothAir", at, CheckStep.Result, new CheckFields { Result = result });
            store.Add(begun.CheckId, "boothAir", at, CheckStep.Ended, new CheckFields());
        }
    }

    [Fact]
    public void Failed_AndTheJournalSetAside_AWithinThatIsCancelledLeavesItFailed()
    {
        _shop.CheckOver(SaltPoint.SodiumChloride, 7);
        SetJournalAside();
        _shop.Restart();
        _shop.Begin();
        _shop.BoothPct = SaltPoint.SodiumChloride.HumidityPct(22);
        _shop.Book.PutInJar("boothAir", SaltPoint.SodiumChloride);
        _shop.Run(121, Verdict.Wait);
        _shop.Book.TakeResult("boothAir");
        _shop.BoothPct = 45;
        _shop.Book.SayBack("boothAir", cancelled: true, certain: false); // the lid was open
        _shop.Run(31, Verdict.Wait);
        Assert.Null(_shop.Running());
        Assert.Equal(ReadingQuality.FailedCheck, _shop.Humidity.Quality);
    }

    [Fact]
    public void Failed_ByAFileWithADateAhead_IsOverOnceReplaced()
    {
        _shop.File.Write([new HoldLine("boothAir", ReadingQuality.FailedCheck, _shop.Time.GetUtcNow().AddYears(10), true) { Salt = "sodium-chloride" }]);
        _shop.Restart();
        Assert.Equal(Verdict.Wait, _shop.Verdict);
        _shop.Book.Replace("boothAir");
        Assert.Equal(Verdict.Spray, _shop.Verdict);
        _shop.Restart();
        Assert.Equal(Verdict.Spray, _shop.Verdict);
    }

    [Fact]
    public void Result_TakenTwice_OrWithoutAProvenClock_IsRefused()
    {
        _shop.Begin();
        _shop.BoothPct = SaltPoint.SodiumChloride.HumidityPct(22);
        _shop.Book.PutInJar("boothAir", SaltPoint.SodiumChloride);
        _shop.Run(121, Verdict.Wait);
        _shop.Book.Tick(_shop.Board.Take() with { ClockProven = false });
        Assert.Contains("are not proven", Assert.Throws<CheckRefusedException>(() => _shop.Book.TakeResult("boothAir")).Message, StringComparison.Ordinal);
        _shop.Run(1, Verdict.Wait);
        _shop.Book.TakeResult("boothAir");
        Assert.Contains("taken already", Assert.Throws<CheckRefusedException>(() => _shop.Book.TakeResult("boothAir")).Message, StringComparison.Ordinal);
        Assert.Single(_shop.History().Results);
    }

    private void SetJournalAside()
    {
        foreach (string part in new[] { "", "-wal", "-shm" })
        {
            File.Delete(_shop.Folder.Location.Path + part);
        }
    }
}
