using BoothWatch.Checks;

namespace BoothWatch.Tests.Checks;

public class SaltPointTests
{
    // L. Greenspan, J. Res. NBS 81A (1977) 89, table 2, by 5 °C from 0 °C: humidity and stated uncertainty, % of relative humidity (the table
    // from memory; the coefficients in the code come from two public copies and not from here). The table cuts, and does not round.
    private static readonly Dictionary<string, (double Pct, double UncertaintyPct)[]> Table = new()
    {
        ["lithium-chloride"] =
        [
            (11.23, 0.54), (11.26, 0.47), (11.29, 0.41), (11.30, 0.35), (11.31, 0.31), (11.30, 0.27), (11.28, 0.24), (11.25, 0.22), (11.21, 0.21), (11.16, 0.21), (11.10, 0.22),
        ],
        ["magnesium-chloride"] =
        [
            (33.66, 0.33), (33.60, 0.28), (33.47, 0.24), (33.30, 0.21), (33.07, 0.18), (32.78, 0.16), (32.44, 0.14), (32.05, 0.13), (31.60, 0.13), (31.10, 0.13), (30.54, 0.14),
        ],
        ["sodium-chloride"] =
        [
            (75.51, 0.34), (75.65, 0.27), (75.67, 0.22), (75.61, 0.18), (75.47, 0.14), (75.29, 0.12), (75.09, 0.11), (74.87, 0.12), (74.68, 0.13), (74.52, 0.16), (74.43, 0.19),
        ],
        ["potassium-chloride"] =
        [
            (88.61, 0.53), (87.67, 0.45), (86.77, 0.39), (85.92, 0.33), (85.11, 0.29), (84.34, 0.26), (83.62, 0.25), (82.95, 0.25), (82.32, 0.25), (81.74, 0.28), (81.20, 0.31),
        ],
    };

    public static TheoryData<string> Salts => [.. SaltPoint.All.Select(salt => salt.Id)];

    [Theory]
    [MemberData(nameof(Salts))]
    public void HumidityPct_AtTheTemperaturesOfTheTable_IsTheTablesOwn(string id)
    {
        SaltPoint salt = SaltPoint.Find(id)!;
        for (int i = 0; i < Table[id].Length; i++)
        {
            (double pct, double uncertaintyPct) = Table[id][i];
            Assert.InRange(salt.HumidityPct(5 * i) - pct, -1e-6, 0.01);
            Assert.Equal(uncertaintyPct, salt.UncertaintyPct(5 * i), 9);
        }
    }

    // CRC Handbook of Chemistry and Physics, Constant humidity solutions: RH = A exp(B/T), generally accurate to 2 %, with the source's ranges.
    [Theory]
    [InlineData("lithium-chloride", 14.53, -75, 20, 50)]
    [InlineData("magnesium-chloride", 29.26, 34, 5, 45)]
    [InlineData("sodium-chloride", 69.20, 25, 10, 40)]
    [InlineData("potassium-chloride", 49.38, 159, 5, 25)]
    public void HumidityPct_AgainstTheHandbooksExponential_IsWithinItsAccuracy(string id, double a, double b, int lowestC, int highestC)
    {
        for (int temperatureC = lowestC; temperatureC <= highestC; temperatureC++)
        {
            Assert.InRange(SaltPoint.Find(id)!.HumidityPct(temperatureC) - (a * Math.Exp(b / (temperatureC + 273.15))), -2, 2);
        }
    }

    [Fact]
    public void HumidityPct_OfLithiumChloride_HasNotTheSignOfTheWrongCopies() =>
        Assert.InRange(SaltPoint.LithiumChloride.HumidityPct(25), 11.30, 11.31); // with a minus sign it is 10.89

    [Theory]
    [MemberData(nameof(Salts))]
    public void SlopePctPerC_OverTheRange_IsTheNumericalDerivative_AndNothingJumps(string id)
    {
        SaltPoint salt = SaltPoint.Find(id)!;
        const double StepC = 1e-4;
        for (double temperatureC = 1; temperatureC <= 49; temperatureC += 0.37)
        {
            double slope = (salt.HumidityPct(temperatureC + StepC) - salt.HumidityPct(temperatureC - StepC)) / (2 * StepC);
            Assert.Equal(slope, salt.SlopePctPerC(temperatureC), 6);
            Assert.InRange(slope, -0.25, 0.1);
            Assert.InRange(salt.UncertaintyPct(temperatureC), 0.1, 0.6);
        }
    }

    [Theory]
    [InlineData(-0.01)]
    [InlineData(50.01)]
    [InlineData(double.NaN)]
    public void Salt_OutsideItsRange_GivesNothing(double temperatureC)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => SaltPoint.SodiumChloride.HumidityPct(temperatureC));
        Assert.Throws<ArgumentOutOfRangeException>(() => SaltPoint.SodiumChloride.SlopePctPerC(temperatureC));
        Assert.Throws<ArgumentOutOfRangeException>(() => SaltPoint.SodiumChloride.UncertaintyPct(temperatureC));
    }

    [Fact]
    public void Find_AnotherSalt_IsNone() => Assert.Null(SaltPoint.Find("sugar"));
}
