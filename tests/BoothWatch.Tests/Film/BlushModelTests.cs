using BoothWatch.Air;
using BoothWatch.Film;
using BoothWatch.Solvents;

namespace BoothWatch.Tests.Film;

public class BlushModelTests
{
    private static readonly AirUncertainty Sensor = new(0.1, 1);

    [Fact]
    public void Assess_Margin_IsCriticalDewPointMinusDewPoint()
    {
        MoistAir air = MoistAir.FromRelativeHumidity(22.3, 63, 100_900);
        BlushAnswer answer = Ask(air, loadedPct: 5);
        Assert.Equal(answer.CriticalDewPointC - air.DewPointC, answer.BlushMarginC, 9);
        Assert.Equal(5, answer.RetarderPct);
        Assert.Equal(100 * SaturationPressure.OverWater(answer.CriticalDewPointC) / SaturationPressure.OverWater(22.3), answer.CriticalHumidityPct, 6);
    }

    [Fact]
    public void Assess_MarginMeansWhatItSays_DewPointMayRiseByThatMuch()
    {
        MoistAir air = MoistAir.FromRelativeHumidity(23.1, 70, 101_325);
        BlushAnswer answer = Ask(air, loadedPct: 3);
        Assert.InRange(answer.BlushMarginC, 0.5, 5);
        Assert.InRange(Ask(MoistAir.FromDewPoint(23.1, air.DewPointC + answer.BlushMarginC - 0.06, 101_325), loadedPct: 3).WaterAtSetGPerM2, 0, 0.1);
        Assert.InRange(Ask(MoistAir.FromDewPoint(23.1, air.DewPointC + answer.BlushMarginC + 0.06, 101_325), loadedPct: 3).WaterAtSetGPerM2, 0.1, 5);
    }

    [Fact]
    public void Assess_FromTheCache_StaysWithinFiveHundredthsOfTheExactAnswer()
    {
        BlushModel model = new();
        Random random = new(17);
        for (int i = 0; i < 60; i++)
        {
            double airC = 5 + (30 * random.NextDouble());
            double pieceC = airC - 4 + (6 * random.NextDouble());
            MoistAir air = MoistAir.FromRelativeHumidity(airC, 60, 90_000 + (15_000 * random.NextDouble()));
            CoatPlan plan = TestCoat.Plan(loadedPct: i % 16);
            double fromCache = model.Assess(plan, air, pieceC, Sensor, 0.3, 1, 2).CriticalDewPointC;
            double exact = CriticalHumidity.Find(TestCoat.Conditions(plan.Ladder[i % 16].Mix, airC, pieceC) with { PressurePa = air.PressurePa }).DewPointC;
            Assert.Equal(exact, fromCache, 0.05);
        }
    }

    [Fact]
    public void Assess_WithNothingLoaded_RecommendsLeastLevelThatCovers()
    {
        MoistAir air = MoistAir.FromRelativeHumidity(24, 72, 101_325);
        BlushAnswer free = Ask(air, required: 0.5, coverage: 1);
        double recommended = Assert.NotNull(free.RecommendedRetarderPct);
        Assert.InRange(recommended, 1, 15);
        Assert.Equal(recommended, free.RetarderPct);
        Assert.True(free.BlushMarginC >= 0.5 + free.MarginUncertaintyC);
        BlushAnswer below = Ask(air, loadedPct: recommended - 1, required: 0.5, coverage: 1);
        Assert.True(below.BlushMarginC < 0.5 + below.MarginUncertaintyC);
        Assert.Equal(recommended, below.RecommendedRetarderPct);
    }

    [Fact]
    public void Assess_InDryAir_RecommendsNoRetarder() =>
        Assert.Equal(0, Ask(MoistAir.FromRelativeHumidity(21, 45, 101_325)).RecommendedRetarderPct);

    [Fact]
    public void Assess_InMonsoon_RecommendsNothingAndAnswersForTheHighestLevel()
    {
        BlushAnswer answer = Ask(MoistAir.FromRelativeHumidity(30, 95, 101_325));
        Assert.Null(answer.RecommendedRetarderPct);
        Assert.Equal(15, answer.RetarderPct);
        Assert.Equal(answer.BlushMarginC, answer.MarginAtHighestRetarderC);
        Assert.InRange(answer.MarginAtHighestRetarderC, -6, 0);
    }

    [Fact]
    public void Assess_PieceColderThanDewPoint_HasNegativeMarginAtEveryLevel()
    {
        MoistAir air = MoistAir.FromRelativeHumidity(25, 60, 101_325);
        BlushAnswer answer = new BlushModel().Assess(TestCoat.Plan(), air, air.DewPointC - 2, Sensor, 0.3, 1, 2);
        Assert.Null(answer.RecommendedRetarderPct);
        Assert.InRange(answer.MarginAtHighestRetarderC, -10, -2 + 1e-9);
    }

    [Fact]
    public void Margin_WithMoreRetarder_NeverFalls()
    {
        BlushModel model = new();
        MoistAir air = MoistAir.FromRelativeHumidity(24, 75, 101_325);
        double previous = double.NegativeInfinity;
        foreach ((double level, _) in TestCoat.Plan().Ladder)
        {
            double margin = model.Assess(TestCoat.Plan(loadedPct: level), air, 24, Sensor, 0.3, 1, 2).BlushMarginC;
            Assert.True(margin >= previous - 0.01, $"{level} %: {margin} after {previous}");
            previous = margin;
        }
    }

    [Fact]
    public void Uncertainty_AgainstRepeatedAnswersWithDisturbedInputs_Agrees()
    {
        // Monte Carlo after JCGM 101: disturb what the sensors say, ask the exact search again, and compare the spread.
        BlushModel sure = new(new FilmParameters { ModelUncertaintyC = 0 });
        CoatPlan plan = TestCoat.Plan(loadedPct: 5);
        AirUncertainty wide = new(0.5, 2);
        MoistAir air = MoistAir.FromRelativeHumidity(23, 66, 101_325);
        double claimed = sure.Assess(plan, air, 22, wide, 0.8, 1, 2).MarginUncertaintyC;
        Random random = new(5);
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        List<double> margins = [];
        for (int i = 0; i < 300; i++)
        {
            MoistAir disturbed = MoistAir.FromRelativeHumidity(23 + (0.5 * Normal()), 66 + (2 * Normal()), 101_325);
            margins.Add(sure.Assess(plan, disturbed, 22 + (0.8 * Normal()), wide, 0.8, 1, 2).BlushMarginC);
        }

        double mean = margins.Average();
        double spread = Math.Sqrt(margins.Sum(margin => (margin - mean) * (margin - mean)) / (margins.Count - 1));
        Assert.Equal(1, spread / claimed, 0.15); // 300 samples know a spread to 4 %
    }

    [Fact]
    public void Uncertainty_WithPerfectSensors_IsThatOfTheModel() => Assert.Equal(
        FilmParameters.Default.ModelUncertaintyC,
        new BlushModel().Assess(TestCoat.Plan(loadedPct: 0), MoistAir.FromRelativeHumidity(22, 60, 101_325), 22, new AirUncertainty(0, 0), 0, 1, 2).MarginUncertaintyC,
        9);

    [Theory]
    [InlineData(15, 0, 75, 1)]
    [InlineData(25, 0, 75, 1)]
    [InlineData(25, 10, 75, 1)]
    [InlineData(25, 0, 40, 4)]
    [InlineData(25, 5, 40, 4)]
    public void ModelUncertainty_AgainstSpreadOfTheAssumptions_IsNeitherLessNorFarMore(double airC, double levelPct, double wetFilmUm, double thinnerParts)
    {
        // Root of the sum of squares of one-at-a-time changes; a pair of opposite changes counts once, with its mean size.
        Mix mix = TestCoat.Retarded(TestCoat.Thinned("ordinary thinner", thinnerParts), levelPct);
        double sum = 0;
        for (int i = 0; i < 14; i += 2)
        {
            double size = (Math.Abs(Variations.ChangeC(i, mix, wetFilmUm, airC)) + Math.Abs(Variations.ChangeC(i + 1, mix, wetFilmUm, airC))) / 2;
            sum += size * size;
        }

        double landing = Variations.ChangeC(14, mix, wetFilmUm, airC);
        double spread = Math.Sqrt(sum + (landing * landing));
        Assert.InRange(FilmParameters.Default.ModelUncertaintyC, spread, 2 * spread);
    }

    [Fact]
    public void Uncertainty_OfWorseSensors_IsLarger()
    {
        MoistAir air = MoistAir.FromRelativeHumidity(22, 60, 101_325);
        BlushModel model = new();
        double good = model.Assess(TestCoat.Plan(loadedPct: 0), air, 22, Sensor, 0.3, 1, 2).MarginUncertaintyC;
        Assert.True(model.Assess(TestCoat.Plan(loadedPct: 0), air, 22, new AirUncertainty(0.1, 3), 0.3, 1, 2).MarginUncertaintyC > good);
        Assert.True(model.Assess(TestCoat.Plan(loadedPct: 0), air, 22, Sensor, 2, 1, 2).MarginUncertaintyC > good);
    }

    [Fact]
    public void Assess_LoadedLevelOutsideTheLadder_NamesItAndTheLadder()
    {
        ArgumentException error = Assert.Throws<ArgumentException>(
            () => new BlushModel().Assess(TestCoat.Plan(levelsPct: [0, 5, 10]) with { LoadedRetarderPct = 7 }, MoistAir.FromRelativeHumidity(22, 60, 101_325), 22, Sensor, 0.3, 1, 2));
        Assert.Contains("7 %", error.Message, StringComparison.Ordinal);
        Assert.Contains("0, 5, 10", error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(75, 20)]
    [InlineData(20, 95)]
    [InlineData(20, double.NaN)]
    public void Assess_AirOrPieceOutsideTheModel_HasNoAnswer(double airC, double pieceC) => Assert.Throws<OutsideModelException>(
        () => new BlushModel().Assess(TestCoat.Plan(), MoistAir.FromRelativeHumidity(airC, 30, 101_325), pieceC, Sensor, 0.3, 1, 2));

    [Fact]
    public void Cache_OverManyAirs_StaysBounded()
    {
        BlushDewPointCache cache = new(new FilmParameters { LongestRunS = 1, SubstrateCells = 2, Tolerance = 0.05 });
        for (int i = 0; i < BlushDewPointCache.Capacity + 50; i++)
        {
            cache.Near(TestCoat.Conditions(TestCoat.Unthinned, airC: 20, pieceC: 20) with { PressurePa = 60_000, WetFilmUm = 20 + (i * 0.1) });
        }

        Assert.InRange(cache.Count, 1, BlushDewPointCache.Capacity);
    }

    [Theory]
    [InlineData(0, null)]
    [InlineData(1, 0)]
    [InlineData(16, 9)]
    public void RetarderLevel_OnMonotoneLadder_FindsTheLeast(int levels, int? expected) =>
        Assert.Equal(expected, RetarderLevel.Recommend(levels, level => level >= Math.Min(9, levels - 1)));

    private static BlushAnswer Ask(MoistAir air, double? loadedPct = null, double required = 1, double coverage = 2) =>
        new BlushModel().Assess(TestCoat.Plan(loadedPct: loadedPct), air, air.TemperatureC, Sensor, 0.3, required, coverage);
}
