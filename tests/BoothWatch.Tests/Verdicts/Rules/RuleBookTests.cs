using BoothWatch.Readings;
using BoothWatch.Verdicts;
using BoothWatch.Verdicts.Rules;

namespace BoothWatch.Tests.Verdicts.Rules;

public class RuleBookTests
{
    [Fact]
    public void All_EveryRuleOfTheFolder_IsInTheBookOnceWithItsOwnName()
    {
        Type[] written = [.. typeof(IRule).Assembly.GetTypes().Where(type => type.IsClass && type.IsAssignableTo(typeof(IRule)))];
        Assert.NotEmpty(written);
        Assert.Equal(written.OrderBy(type => type.Name), RuleBook.All.Select(rule => rule.GetType()).OrderBy(type => type.Name));
        Assert.Equal(RuleBook.All.Length, RuleBook.All.Select(rule => rule.Name).Distinct().Count());
        Assert.All(RuleBook.All, rule => Assert.Matches("^[a-z]+(-[a-z]+)*$", rule.Name));
    }

    [Fact]
    public void Decide_GoodBooth_IsSprayWithAPositiveReason()
    {
        Reason only = Assert.Single(RuleBook.Decide(GoodBooth.Evidence()));
        Assert.Equal(("blush-margin", Verdict.Spray), (only.Rule, only.Limit));
    }

    [Fact]
    public void Decide_SeveralReasons_MostLimitingFirstThenBySeverity()
    {
        Evidence evidence = GoodBooth.Evidence(
            GoodBooth.Snapshot(GoodBooth.Good(Quantity.ExhaustProof, 0), GoodBooth.Good(Quantity.FilterPressureDrop, 200)),
            GoodBooth.Air(31, 25, 8, pieceC: 22),
            GoodBooth.Film(-1, loadedPct: 5, recommendedPct: 9) with { SolventTrappingRisk = true });
        Assert.Equal(
            ["exhaust-not-proven", "blush-margin", "too-hot", "piece-against-air", "solvent-trapping", "too-dry", "filter-loaded"],
            RuleBook.Decide(evidence).Select(reason => reason.Rule));
    }

    [Fact]
    public void Decide_RemarksThatAllowSpray_ComeAfterTheVerdictAndOnlyWithSpray()
    {
        BoothSnapshot noBarometer = GoodBooth.Snapshot().Without(Quantity.StationPressure);
        FilmFindings spare = GoodBooth.Film(loadedPct: 8, recommendedPct: 2);
        Assert.Equal(
            ["blush-margin", "pressure-assumed", "spare-retarder"],
            RuleBook.Decide(GoodBooth.Evidence(noBarometer, film: spare)).Select(reason => reason.Rule));
        Assert.Equal(
            ["too-dry"],
            RuleBook.Decide(GoodBooth.Evidence(noBarometer, GoodBooth.Air(humidityPct: 20), spare)).Select(reason => reason.Rule));
    }

    [Fact]
    public void Decide_NoRuleSpeaks_IsWait()
    {
        Reason only = Assert.Single(RuleBook.Decide(GoodBooth.Evidence(), [new AirTooDry()]));
        Assert.Equal(Verdict.Wait, only.Limit);
    }

    [Fact]
    public void Decide_RulesInAnyOrder_GiveTheSameReasons()
    {
        Evidence evidence = GoodBooth.Evidence(
            GoodBooth.Snapshot(GoodBooth.Bad(Quantity.BoothTemperature, ReadingQuality.Stale, "a"), GoodBooth.Bad(Quantity.BoothHumidity, ReadingQuality.Frozen, "b")),
            GoodBooth.Air(36, 20, 20, pieceC: 21));
        Assert.Equal(RuleBook.Decide(evidence).AsEnumerable(), RuleBook.Decide(evidence, RuleBook.All.Reverse()));
    }
}
