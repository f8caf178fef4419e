using BoothWatch.Checks;
using BoothWatch.Service.Checks;
using BoothWatch.Service.Tests.Outputs.Series;

namespace BoothWatch.Service.Tests.Checks;

/// <summary>What the record of a job says of checks, as of its first coat.</summary>
public sealed class LastChecksTests : IDisposable
{
    private static readonly DateTimeOffset Coat = new(2026, 11, 20, 10, 0, 0, TimeSpan.Zero);

    private readonly JournalFolder _folder = new();
    private readonly CheckStore _store;

    public LastChecksTests() => _store = new CheckStore(_folder.Journal(), _folder.Location);

    private LastChecks Checks => new(new CheckStore(null, _folder.Location), _folder.Time);

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Of_NoJournal_NoCheck_OrAnotherSensor_IsNone()
    {
        Assert.Null(Checks.Of("boothAir", Coat));
        Check(-3, "intakeAir", Result("sodium-chloride", 1.2));
        Assert.Null(Checks.Of("boothAir", Coat));
    }

    [Fact]
    public void Of_AChecksBeforeTheCoat_IsTheLast_WithDateSaltDeviationUncertaintyAndOutcome()
    {
        Check(-200, "boothAir", Result("sodium-chloride", 0.1));
        Check(-3, "boothAir", Result("magnesium-chloride", -0.5), Result("sodium-chloride", 1.2));
        var check = Checks.Of("boothAir", Coat)!;
        Assert.Equal(Coat.AddDays(-3), check.At, TimeSpan.FromDays(1));
        Assert.Equal(
            "−0.5 % ± 1.1 % (k = 2) over magnesium chloride, within the tolerance of ± 3.6 %; +1.2 % ± 1.1 % (k = 2) over sodium chloride, within the tolerance of ± 3.6 %",
            check.Finding);
    }

    [Fact]
    public void Of_ACheckAfterTheCoat_IsSaidToBeAfterIt()
    {
        Check(5, "boothAir", Result("sodium-chloride", 6));
        Assert.Equal("made after the first coat: +6.0 % ± 1.1 % (k = 2) over sodium chloride, out of the tolerance of ± 3.6 %", Checks.Of("boothAir", Coat)!.Finding);
        Check(-3, "boothAir", Result("sodium-chloride", 3));
        Assert.Equal(
            "+3.0 % ± 1.1 % (k = 2) over sodium chloride, too close to tell to the tolerance of ± 3.6 %; after the first coat, on 25 Nov 2026: +6.0 % ± 1.1 % (k = 2) over sodium chloride, out of the tolerance of ± 3.6 %",
            Checks.Of("boothAir", Coat)!.Finding);
    }

    [Fact]
    public void Of_APartThatWasReplaced_TellsOfThePartThatMeasuredTheCoat()
    {
        Check(-30, "boothAir", Result("sodium-chloride", 1));
        _store.Add(null, "boothAir", Coat.AddDays(1), CheckStep.Replaced, new CheckFields());
        Check(2, "boothAir", Result("sodium-chloride", 0.2));
        Assert.StartsWith("+1.0 %", Checks.Of("boothAir", Coat)!.Finding, StringComparison.Ordinal);
        Assert.DoesNotContain("after", Checks.Of("boothAir", Coat)!.Finding, StringComparison.Ordinal);
        Assert.StartsWith("+0.2 %", Checks.Of("boothAir", Coat.AddDays(3))!.Finding, StringComparison.Ordinal);
        Assert.StartsWith("made after the first coat: +0.2 %", Checks.Of("boothAir", Coat.AddDays(1.5))!.Finding, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_ACancelledCheck_IsNotTold()
    {
        CheckEntry begun = _store.Add(null, "boothAir", Coat.AddDays(-3), CheckStep.Begun, new CheckFields());
        _store.Add(begun.CheckId, "boothAir", Coat.AddDays(-3), CheckStep.Result, new CheckFields { Result = Result("sodium-chloride", 9) });
        _store.Add(begun.CheckId, "boothAir", Coat.AddDays(-3), CheckStep.Back, new CheckFields { Cancelled = true });
        Assert.Null(Checks.Of("boothAir", Coat));
    }

    private static CheckResult Result(string salt, double offPct) => new(salt, 25, 75.3, 75.3 + offPct, 1.1, 3.6);

    private void Check(double day, string sensor, params CheckResult[] results)
    {
        DateTimeOffset at = Coat.AddDays(day);
        CheckEntry begun = _store.Add(null, sensor, at, CheckStep.Begun, new CheckFields());
        foreach (CheckResult result in results)
        {
            at = at.AddHours(2);
            _store.Add(begun.CheckId, sensor, at, CheckStep.Result, new CheckFields { Result = result });
        }

        _store.Add(begun.CheckId, sensor, at, CheckStep.Back, new CheckFields());
        _store.Add(begun.CheckId, sensor, at, CheckStep.Ended, new CheckFields());
    }
}
