using BoothWatch.Film;
using BoothWatch.Service.Coat;
using BoothWatch.Service.Materials;

namespace BoothWatch.Service.Tests.Coat;

public class CoatPlannerTests
{
    private static readonly MaterialCatalogue Catalogue = MaterialsLoader.Load(Path.Combine(RepositoryFile.Root, "config", "materials"));

    [Fact]
    public void Defaults_AreAnUnthinnedClearCoatOnWood()
    {
        CoatPlan plan = CoatPlanner.Plan(new CoatOptions(), Catalogue);

        Assert.Equal((CoatKind.Clear, 75, "wood", 0.5, 250), (plan.Kind, plan.WetFilmUm, plan.Substrate.Id, plan.AirSpeedMPerS, plan.CupMl));
        Assert.Equal("nitrocellulose lacquer, unthinned; retarder 2-butoxyethanol", plan.Description);
        Assert.Null(plan.LoadedRetarderPct);
        Assert.Equal(Enumerable.Range(0, 16).Select(level => (double)level), plan.Ladder.Select(step => step.RetarderPct));
        Assert.Equal(Catalogue.Lacquers["nitrocellulose lacquer"].Mix.PolymerVolumeFraction, plan.Ladder[0].Mix.PolymerVolumeFraction, 1e-12);
    }

    [Fact]
    public void FlashCoat_HoldsAFifthOfThePolymer()
    {
        CoatPlan plan = CoatPlanner.Plan(new CoatOptions { Kind = CoatKind.Flash }, Catalogue);

        Assert.Equal("1 part nitrocellulose lacquer to 4 parts ordinary thinner; retarder 2-butoxyethanol", plan.Description);
        // 1 part in 5 by volume; a tenth more liquid at 10 % retarder
        double lacquer = Catalogue.Lacquers["nitrocellulose lacquer"].Mix.PolymerVolumeFraction;
        Assert.Equal(lacquer / 5, plan.Ladder[0].Mix.PolymerVolumeFraction, 1e-12);
        Assert.Equal(lacquer / 5 / 1.1, plan.Ladder[10].Mix.PolymerVolumeFraction, 1e-12);
        Assert.Equal(0.1 / 1.1, plan.Ladder[10].Mix.Solvents.Single(part => part.Solvent.Id == "2-butoxyethanol").VolumeFraction, 1e-12);
    }

    [Theory]
    [InlineData(CoatKind.Flash)]
    [InlineData(CoatKind.Clear)]
    [InlineData(CoatKind.Colour)]
    [InlineData(CoatKind.Sealer)]
    public void EveryKind_HasItsMaterials(CoatKind kind)
    {
        CoatPlan plan = CoatPlanner.Plan(new CoatOptions { Kind = kind }, Catalogue);

        Assert.All(plan.Ladder, step => Assert.Equal(1, step.Mix.PolymerVolumeFraction + step.Mix.Solvents.Sum(part => part.VolumeFraction), 1e-9));
    }

    [Theory]
    [InlineData(null, 2.0, 15, 8)] // 0, 2, ... 14
    [InlineData(10.0, 2.5, 10, 5)]
    [InlineData(0.0, 1.0, 0, 1)]
    public void Ladder_RisesByTheStepToTheHighest(double? highest, double step, double notOver, int levels)
    {
        CoatPlan plan = CoatPlanner.Plan(new CoatOptions { RetarderHighestPct = highest, RetarderStepPct = step }, Catalogue);

        Assert.Equal(levels, plan.Ladder.Count);
        Assert.Equal(Enumerable.Range(0, levels).Select(i => i * step), plan.Ladder.Select(entry => entry.RetarderPct));
        Assert.True(plan.Ladder[^1].RetarderPct <= notOver);
    }

    [Theory]
    [InlineData(4.5)]
    [InlineData(20.0)]
    public void LoadedLevel_ThatIsNoStep_IsOnTheLadder(double loaded)
    {
        CoatPlan plan = CoatPlanner.Plan(new CoatOptions { LoadedRetarderPct = loaded }, Catalogue);

        Assert.Contains(loaded, plan.Ladder.Select(step => step.RetarderPct));
        Assert.Equal(plan.Ladder.Select(step => step.RetarderPct).Order(), plan.Ladder.Select(step => step.RetarderPct));
    }

    [Fact]
    public void Validator_NamesEveryWrongSetting()
    {
        var wrong = new CoatOptions
        {
            Kind = (CoatKind)9,
            Lacquer = "nitrocelulose lacquer",
            Thinner = "water",
            Retarder = "x",
            Substrate = "glas",
            LacquerParts = 0,
            ThinnerParts = -1,
            LoadedRetarderPct = 31,
            RetarderHighestPct = double.NaN,
            RetarderStepPct = 0,
            WetFilmUm = 5,
            AirSpeedMPerS = 6,
            CupMl = 1,
        };

        string[] errors = [.. new CoatOptionsValidator(Catalogue).Validate(null, wrong).Failures!];

        Assert.Equal(13, errors.Length);
        Assert.Contains("coat:lacquer is \"nitrocelulose lacquer\", which is not in config/materials; did you mean nitrocellulose lacquer?", errors);
        Assert.Contains("coat:lacquerParts is 0; give a number from 0.01 to 100 (parts), for example 1", errors);
        Assert.Contains("coat:retarderHighestPct is NaN; give a number from 0 to 30 (%), for example 15", errors);
        Assert.All(errors, error => Assert.Matches("^coat:[a-zA-Z]+ is .+; ", error));
    }

    [Fact]
    public void Validator_AcceptsTheDefaults() => Assert.True(new CoatOptionsValidator(Catalogue).Validate(null, new CoatOptions()).Succeeded);
}
