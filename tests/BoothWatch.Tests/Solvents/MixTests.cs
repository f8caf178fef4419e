using BoothWatch.Solvents;
using BoothWatch.Tests.Film;

namespace BoothWatch.Tests.Solvents;

public class MixTests
{
    private static readonly Solvent Acetone = TestCoat.Materials.Solvents["acetone"];
    private static readonly Solvent Toluene = TestCoat.Materials.Solvents["toluene"];

    [Theory]
    [InlineData(-0.1, 0.9, 0.2, "volume fraction of acetone is -0.1")]
    [InlineData(double.NaN, 0.9, 0.1, "volume fraction of acetone is NaN")]
    [InlineData(0.5, 0.3, 0.1, "sum to 0.9")]
    [InlineData(0.5, 0.3, 1.2, "polymer volume fraction is 1.2")]
    public void Mix_OfImpossibleFractions_NamesFieldValueAndFix(double acetone, double toluene, double polymer, string expected)
    {
        ArgumentException error = Assert.Throws<ArgumentException>(() => new Mix([(Acetone, acetone), (Toluene, toluene)], polymer));
        Assert.Contains(expected, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Mix_NamingASolventTwice_SaysSo() =>
        Assert.Contains("acetone stands twice", Assert.Throws<ArgumentException>(() => new Mix([(Acetone, 0.5), (Acetone, 0.5)], 0)).Message, StringComparison.Ordinal);

    [Fact]
    public void With_OnePartToThree_AddsByVolume()
    {
        Mix blend = new Mix([(Acetone, 0.8)], 0.2).With(1, new Mix([(Toluene, 0.5), (Acetone, 0.5)], 0), 3);
        Assert.Equal(0.05, blend.PolymerVolumeFraction, 12);
        Assert.Equal((0.8 + 1.5) / 4, blend.Solvents.Single(part => part.Solvent == Acetone).VolumeFraction, 12);
        Assert.Equal(1.5 / 4, blend.Solvents.Single(part => part.Solvent == Toluene).VolumeFraction, 12);
    }

    [Fact]
    public void Mixes_OfTheSameParts_AreEqual()
    {
        Mix left = new([(Acetone, 0.6), (Toluene, 0.4)], 0);
        Assert.Equal(left, new Mix([(Acetone, 0.6), (Toluene, 0.4)], 0));
        Assert.NotEqual(left, new Mix([(Acetone, 0.5), (Toluene, 0.5)], 0));
    }

    [Fact]
    public void Ladder_LevelIsPercentOfTheUnretardedVolume()
    {
        IReadOnlyList<(double RetarderPct, Mix Mix)> ladder = LadderBuilder.Build(TestCoat.Unthinned, TestCoat.Retarder, [0, 25]);
        Assert.Same(TestCoat.Unthinned, ladder[0].Mix);
        Assert.Equal(0.2, ladder[1].Mix.Solvents.Single(part => part.Solvent.Id == "2-butoxyethanol").VolumeFraction, 12); // 25 on top of 100
    }

    [Theory]
    [InlineData(new double[0], "ladder is empty")]
    [InlineData(new double[] { 0, 5, 5 }, "5 % follows 5 %")]
    [InlineData(new double[] { -1 }, "level is -1 %")]
    [InlineData(new double[] { 0, 400 }, "level is 400 %")]
    public void Ladder_OfImpossibleLevels_NamesThem(double[] levelsPct, string expected) => Assert.Contains(
        expected,
        Assert.Throws<ArgumentException>(() => LadderBuilder.Build(TestCoat.Unthinned, TestCoat.Retarder, levelsPct)).Message,
        StringComparison.Ordinal);

    [Theory]
    [InlineData(0, 1)]
    [InlineData(1, -1)]
    [InlineData(double.NaN, 1)]
    public void Thin_ByImpossibleParts_NamesThem(double lacquerParts, double thinnerParts) => Assert.Contains(
        "volumes to mix",
        Assert.Throws<ArgumentException>(() => LadderBuilder.Thin(TestCoat.Lacquer, lacquerParts, TestCoat.Materials.Thinners["ordinary thinner"], thinnerParts)).Message,
        StringComparison.Ordinal);
}
