using System.Text.Json;
using BoothWatch.Service.Tests.Advice;

namespace BoothWatch.Service.Tests.Commands.Advise;

public sealed class AdviseCommandTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("advise").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task DryAir_IsSprayed_AndSaturatedAirIsNot()
    {
        CommandResult dry = await CommandRun.With("advise --temperature 22C --humidity 45% --coat clear");
        CommandResult wet = await CommandRun.With("advise --temperature 22C --humidity 97% --coat clear");

        Assert.Equal((0, ""), (dry.ExitCode, dry.Error));
        Assert.StartsWith("SPRAY: clear coat, no retarder needed\n", dry.Out, StringComparison.Ordinal);
        Assert.StartsWith("WAIT: ", wet.Out, StringComparison.Ordinal);
        Assert.Contains("Not measured here: exhaust", dry.Out, StringComparison.Ordinal);
        Assert.Contains("advice about the finish only", dry.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Json_OfOneQuestion_IsOneObjectThatFitsTheSchema()
    {
        CommandResult result = await CommandRun.With("advise --temperature 24 --humidity 60 --json");

        Assert.Equal(0, result.ExitCode);
        Assert.True(AdviseSchema.Accepts(result.Out), result.Out);
        // ASHRAE psychrometrics: 24 °C and 60 % have a dew point of 15.8 °C
        Assert.Equal(15.8, AdviseSchema.Parse(result.Out).GetProperty("dewPointC").GetDouble(), 0.05);
    }

    [Fact]
    public async Task SameAirInOtherUnits_GivesTheSameAnswer()
    {
        JsonElement metric = await Ask("advise --temperature 24C --humidity 60% --piece 22C --pressure 1000hPa --wet-film 76.2um --air-speed 0.508m/s --json");
        JsonElement other = await Ask("advise --temperature 75.2F --humidity 60 --piece 71.6F --pressure 100kPa --wet-film 3mil --air-speed 100fpm --json");

        Assert.Equal(metric.GetProperty("blushMarginC").GetDouble(), other.GetProperty("blushMarginC").GetDouble(), 0.005);
        Assert.Equal(metric.GetProperty("timeToSetS").GetDouble(), other.GetProperty("timeToSetS").GetDouble(), 0.05);
    }

    [Fact]
    public async Task Margin_IsTheCriticalDewPointMinusTheDewPoint()
    {
        JsonElement answer = await Ask("advise --temperature 24 --humidity 60 --retarder 5 --json");

        Assert.Equal(
            answer.GetProperty("criticalDewPointC").GetDouble() - answer.GetProperty("dewPointC").GetDouble(),
            answer.GetProperty("blushMarginC").GetDouble(),
            0.002);
        Assert.Equal(5, answer.GetProperty("figuresForRetarderPct").GetDouble());
    }

    [Fact]
    public async Task LoadedLevelBetweenTheSteps_IsAnsweredForThatLevel()
    {
        JsonElement answer = await Ask("advise --temperature 24 --humidity 60 --retarder 4.5 --json");

        Assert.Equal(4.5, answer.GetProperty("figuresForRetarderPct").GetDouble());
    }

    [Fact]
    public async Task WiderTolerance_WidensTheMargin()
    {
        double narrow = (await Ask("advise --temperature 24 --humidity 60 --json")).GetProperty("marginUncertaintyC").GetDouble();
        double wide = (await Ask("advise --temperature 24 --humidity 60 --humidity-tolerance 6 --json")).GetProperty("marginUncertaintyC").GetDouble();

        Assert.True(wide > narrow * 1.2, $"{narrow} {wide}");
    }

    [Fact]
    public async Task MixFile_IsAnsweredAsItStands()
    {
        string mix = Write("mix.json", """{ "name": "neat ester", "solvents": { "n-butyl acetate": 0.92 }, "polymerVolumeFraction": 0.08, "substrate": "glass" }""");

        JsonElement answer = AdviseSchema.Parse((await CommandRun.With(["advise", "--temperature", "26.7", "--humidity", "50", "--mix", mix, "--json"])).Out);

        Assert.Equal(0, answer.GetProperty("figuresForRetarderPct").GetDouble());
        Assert.Equal("glass", answer.GetProperty("inputs").GetProperty("substrate").GetString());
        Assert.StartsWith("neat ester", answer.GetProperty("inputs").GetProperty("mix").GetString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("n-buthyl acetate", "did you mean n-butyl acetate?")]
    [InlineData("unobtainium", "known: ")]
    public async Task MixFile_WithAnUnknownSolvent_SuggestsTheNearest(string solvent, string says)
    {
        string mix = Write("mix.json", $$"""{ "solvents": { "{{solvent}}": 0.92 }, "polymerVolumeFraction": 0.08 }""");

        CommandResult result = await CommandRun.With(["advise", "--temperature", "24", "--humidity", "50", "--mix", mix]);

        Assert.Equal(2, result.ExitCode);
        Assert.StartsWith($"--mix is '{solvent}': it is not a solvent of config/materials; ", result.Error, StringComparison.Ordinal);
        Assert.Contains(says, result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task MixFile_WithOneSolventUnderTwoNames_IsRefused()
    {
        string mix = Write("mix.json", """{ "solvents": { "MEK": 0.42, "methyl ethyl ketone": 0.5 }, "polymerVolumeFraction": 0.08 }""");

        CommandResult result = await CommandRun.With(["advise", "--temperature", "24", "--humidity", "50", "--mix", mix]);

        Assert.Equal(2, result.ExitCode);
        Assert.Contains("one solvent", result.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--lacquer-material", "nitrocelulose lacquer", "did you mean nitrocellulose lacquer?")]
    [InlineData("--thinner-material", "fast", "known: fast thinner")]
    [InlineData("--retarder-material", "2-butoxyethanl", "did you mean 2-butoxyethanol?")]
    [InlineData("--substrate", "glas", "did you mean glass?")]
    public async Task UnknownMaterial_SuggestsTheNearest(string argument, string id, string says)
    {
        CommandResult result = await CommandRun.With(["advise", "--temperature", "24", "--humidity", "50", argument, id]);

        Assert.Equal(2, result.ExitCode);
        Assert.StartsWith($"{argument} is '{id}': it is not in config/materials; {says}", result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task WrongConfiguration_IsReportedBeforeAnything()
    {
        string config = Write("boothwatch.json", """{ "coat": { "cupMl": -1, "lacquer": "varnish" }, "page": "not looked at by advise" }""");

        CommandResult result = await CommandRun.With(["advise", "--temperature", "24", "--humidity", "50", "--config", config]);

        Assert.Equal(2, result.ExitCode);
        Assert.Contains("coat:cupMl is -1; give a number from 10 to 20000 (mL), for example 250", result.Error, StringComparison.Ordinal);
        Assert.Contains("coat:lacquer is \"varnish\", which is not in config/materials", result.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("page", result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task ColdPiece_IsToldWhenItIsWarm_ByItsThickness()
    {
        JsonElement thin = await Ask("advise --temperature 21 --humidity 45 --piece 6 --json");
        JsonElement thick = await Ask("advise --temperature 21 --humidity 45 --piece 6 --thickness 1.77in --json");
        JsonElement warm = await Ask("advise --temperature 21 --humidity 45 --json");

        // No more than 5 °C colder than the air.
        Assert.Equal(16, thin.GetProperty("pieceTargetC").GetDouble(), 0.001);
        Assert.InRange(thin.GetProperty("pieceWarmInS").GetDouble(), 60, 400);
        Assert.InRange(thick.GetProperty("pieceWarmInS").GetDouble(), 900, 3600);
        Assert.Equal(45, thick.GetProperty("inputs").GetProperty("thicknessMm").GetDouble(), 0.1);
        Assert.Equal(0, warm.GetProperty("pieceWarmInS").GetDouble());
        CommandResult text = await CommandRun.With("advise --temperature 21 --humidity 45 --piece 6 --thickness 45");
        Assert.Matches(@"Piece warm         16\.0 °C, in this air about \d+ min \(\d+ to \d+ min\), air on both faces", text.Out);
        Assert.Matches(@"wait, and warm the piece to 16\.0 °C or more, in this air about \d+ min", text.Out);
    }

    private static async Task<JsonElement> Ask(string line)
    {
        CommandResult result = await CommandRun.With(line);
        Assert.Equal((0, ""), (result.ExitCode, result.Error));
        return AdviseSchema.Parse(result.Out);
    }

    private string Write(string name, string text)
    {
        string path = Path.Combine(_folder, name);
        File.WriteAllText(path, text);
        return path;
    }
}
