using BoothWatch.Checks;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace BoothWatch.Tests.Checks;

public class CheckResultTests
{
    // Reckoned by hand: reference 75.298 %; half-widths 0.12 (source), 75.298 x 0.0597 a °C x 0.2 °C = 0.899 (slope of saturation pressure at 25 °C,
    // 189.2 Pa/°C over 3169.8 Pa, IAPWS), 0.1 (change); slope of the fixed point -0.0395 x 0.23 = 0.009; 2 x sqrt((0.0144 + 0.808 + 0.01)/3 + 0.0001) = 1.05.
    [Fact]
    public void Of_TheWorkedExample_IsAsReckonedByHand()
    {
        CheckResult result = CheckResult.Of(SaltPoint.SodiumChloride, Jar(78.0, 25, 0.1), 3.6 / Math.Sqrt(3), 0.23, 0.2);
        Assert.Equal(75.298, result.ReferencePct, 3);
        Assert.Equal(2.70, result.DeviationPct, 2);
        Assert.Equal(1.05, result.ExpandedUncertaintyPct, 2);
        Assert.Equal(3.6, result.TolerancePct, 9);
        Assert.Equal(CheckOutcome.CannotTell, result.Outcome);
    }

    // JCGM 106:2012, 8.3.2 and 8.3.3: acceptance limit inside the tolerance by U, rejection limit outside it by U. 1 % U, 3 % tolerance.
    [Theory]
    [InlineData(0, CheckOutcome.Within)]
    [InlineData(2.0, CheckOutcome.Within)]
    [InlineData(2.01, CheckOutcome.CannotTell)]
    [InlineData(-3.0, CheckOutcome.CannotTell)]
    [InlineData(4.0, CheckOutcome.CannotTell)]
    [InlineData(4.01, CheckOutcome.Outside)]
    [InlineData(-2.0, CheckOutcome.Within)]
    [InlineData(-4.01, CheckOutcome.Outside)]
    [InlineData(double.NaN, CheckOutcome.CannotTell)]
    public void Outcome_AtTheEdgesOfTheGuardBand_IsAsTheGuideSays(double deviationPct, CheckOutcome expected) =>
        Assert.Equal(expected, new CheckResult("sodium-chloride", 25, 0, deviationPct, 1, 3).Outcome);

    // JCGM 101:2008, Monte Carlo, as the judge of the sum of squares: rectangles of the half-widths, a Gaussian temperature.
    [Theory]
    [InlineData("lithium-chloride", 20)]
    [InlineData("magnesium-chloride", 23)]
    [InlineData("sodium-chloride", 25)]
    [InlineData("potassium-chloride", 30)]
    public void ExpandedUncertaintyPct_AgainstMonteCarlo_Agrees(string id, double temperatureC)
    {
        SaltPoint salt = SaltPoint.Find(id)!;
        const double GradientC = 0.4, ChangePct = 0.25, TemperatureC = 0.3;
        double stated = CheckResult.Of(salt, Jar(50, temperatureC, ChangePct), 2, TemperatureC, GradientC).ExpandedUncertaintyPct;
        Random random = new(20_261_125);
        double Rectangle(double half) => half * ((2 * random.NextDouble()) - 1);
        double Gauss(double u) => u * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        double Psat(double t) => 611.2 * Math.Exp(17.62 * t / (243.12 + t)); // WMO No. 8, annex 4.B: another formula than the code's
        double sum = 0, squares = 0;
        const int Draws = 40_000;
        for (int i = 0; i < Draws; i++)
        {
            double trueC = temperatureC + Gauss(TemperatureC);
            double sensorC = trueC + Rectangle(GradientC);
            double atSensorPct = (salt.HumidityPct(trueC) + Rectangle(salt.UncertaintyPct(temperatureC))) * Psat(trueC) / Psat(sensorC);
            double off = 50 + Rectangle(ChangePct) - atSensorPct;
            sum += off;
            squares += off * off;
        }

        double mean = sum / Draws;
        Assert.InRange(stated / (2 * Math.Sqrt((squares / Draws) - (mean * mean))), 0.98, 1.02);
    }

    [Property]
    public Property Outcome_MoreUncertainty_NeverTurnsDoubtIntoADecision() => Prop.ForAll(
        Gen.Choose(-100, 100).Select(n => n / 10.0).ToArbitrary(),
        Gen.Choose(0, 50).Select(n => n / 10.0).ToArbitrary(),
        Gen.Choose(0, 50).Select(n => n / 10.0).ToArbitrary(),
        (deviation, u, more) =>
        {
            CheckOutcome before = new CheckResult("x", 25, 0, deviation, u, 3).Outcome;
            CheckOutcome after = new CheckResult("x", 25, 0, deviation, u + more, 3).Outcome;
            return after == before || after == CheckOutcome.CannotTell;
        });

    [Fact]
    public void Of_WhatHasNotSettled_IsRefused() =>
        Assert.Throws<InvalidOperationException>(() => CheckResult.Of(SaltPoint.SodiumChloride, Jar(78, 25, 0.1) with { NotYet = "not yet" }, 2, 0.2, 0.2));

    private static SettlingState Jar(double pct, double temperatureC, double changePct) => new(null, pct, temperatureC, changePct, 0, TimeSpan.FromHours(3));
}
