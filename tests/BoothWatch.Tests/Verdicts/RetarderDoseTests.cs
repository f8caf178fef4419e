using BoothWatch.Verdicts;
using BoothWatch.Verdicts.Rules;

namespace BoothWatch.Tests.Verdicts;

/// <summary>The cup of these tests is 200 mL of mix: 1 % is 2 mL.</summary>
public class RetarderDoseTests
{
    [Theory]
    [InlineData(null, 9.0, 4.0, "+18 mL", "add 18 mL retarder to 200 mL of mix (9 %)")]
    [InlineData(0.0, 9.0, -1.0, "+18 mL", "add 18 mL retarder to 200 mL of mix (9 %)")]
    [InlineData(5.0, 9.0, -1.0, "+8 mL", "add 8 mL more retarder (to 9 %)")]
    [InlineData(2.75, 9.0, -1.0, "+12.5 mL", "add 12.5 mL more retarder (to 9 %)")]
    [InlineData(5.0, 5.0, 4.0, "5 %", "in the cup 5 %: enough")]
    [InlineData(5.0, 3.0, 4.0, "5 %", "in the cup 5 %: enough")]
    [InlineData(5.0, 0.0, 4.0, "5 %", "the cup has 5 %, this air needs none: fine, it only dries slower")]
    [InlineData(0.0, 0.0, 4.0, "0 %", "no retarder needed")]
    [InlineData(null, 0.0, 4.0, "0 %", "no retarder needed")]
    [InlineData(5.0, null, -1.0, "Wait", "no retarder level holds this air: wait")]
    [InlineData(null, null, 0.8, "Wait", "no retarder level holds this air: wait")]
    [InlineData(15.0, null, 0.8, "15 %", "no retarder level gives the full margin")]
    public void Cup_SaysWhatToAddAndNeverWhatToTakeOut(double? loadedPct, double? neededPct, double marginC, string mark, string advice)
    {
        FilmFindings film = GoodBooth.Film(marginC, loadedPct, neededPct);
        Assert.Equal(mark, RetarderDose.Mark(film));
        Assert.Equal(advice, RetarderDose.Advice(film));
        Assert.True(film.RetarderToAddMl is null or >= 0);
    }

    [Theory]
    [InlineData(1.4, "Wait", "no retarder level holds this air: wait")]
    [InlineData(1.5, "15 %", "no retarder level gives the full margin")]
    public void Cup_WhereTheShopsOwnCoatsBlushEarlier_SaysWaitBelowTheirThreshold(double marginC, string mark, string advice)
    {
        FilmFindings film = GoodBooth.Film(marginC, 15, null) with { BlushesBelowC = 1.5 };
        Assert.Equal(mark, RetarderDose.Mark(film));
        Assert.Equal(advice, RetarderDose.Advice(film));
    }

    [Fact]
    public void Cup_ForAPieceThatWarmingCures_AsksForTheWarmth() => Assert.Equal(
        "no retarder level holds on so cold a piece: warm it first",
        RetarderDose.Advice(GoodBooth.Film(-1.0, null, null) with { HoldsWithWarmPiece = true }));

    [Theory]
    [InlineData(null, 9.0, 4.0)]
    [InlineData(5.0, 9.0, -1.0)]
    [InlineData(5.0, 9.0, 0.4)]
    [InlineData(5.0, 5.0, 4.0)]
    [InlineData(5.0, null, -1.0)]
    [InlineData(null, 12.0, 4.0)]
    public void Reasons_ForAnotherCup_AreThoseThatTheRulesGiveForIt(double? loadedPct, double? neededPct, double marginC)
    {
        FilmFindings film = GoodBooth.Film(marginC, loadedPct, neededPct);
        foreach (double cupMl in new[] { 100.0, 250, 500, 1000 })
        {
            Reason[] expected = Judge(film with { CupMl = cupMl });
            Assert.Equal(expected, Judge(film).Select(reason => RetarderDose.ForCup(reason, film, cupMl)));
        }
    }

    private static Reason[] Judge(FilmFindings film)
    {
        Evidence evidence = new() { Snapshot = GoodBooth.Snapshot(), Policy = new VerdictPolicy(), Air = GoodBooth.Air(), Film = film };
        return [.. new IRule[] { new BlushMargin(), new MuchRetarder() }.SelectMany(rule => rule.Judge(evidence))];
    }
}
