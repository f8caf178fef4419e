using BoothWatch.Verdicts;

namespace BoothWatch.Tests.Verdicts;

public class RetarderTextTests
{
    [Theory]
    [InlineData(250, "250 mL")]
    [InlineData(17.6, "18 mL")]
    [InlineData(2.5, "2.5 mL")]
    [InlineData(0.4, "0.4 mL")]
    [InlineData(0.05, "0.05 mL")] // 0.5 % of the smallest cup, 10 mL
    public void Amount_OfAnyCup_IsNeverRoundedToNothing(double millilitres, string expected) => Assert.Equal(expected, RetarderText.Amount(millilitres));

    [Fact]
    public void RetarderMl_OfTheCup_IsByVolumeOfTheUnretardedMix()
    {
        FilmFindings film = GoodBooth.Film(2, recommendedPct: 9);
        Assert.Equal(film.CupMl * 0.09, film.RecommendedRetarderMl);
        Assert.Null(GoodBooth.Film(2, recommendedPct: null).RecommendedRetarderMl);
    }
}
