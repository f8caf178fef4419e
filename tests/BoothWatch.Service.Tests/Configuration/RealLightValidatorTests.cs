using BoothWatch.Service.Tests.Commands;

namespace BoothWatch.Service.Tests.Configuration;

/// <summary>Emulated readings never light a real lamp, and never pass for a real booth.</summary>
public sealed class RealLightValidatorTests : IDisposable
{
    private const string OneRealPart = """{ "sensors": { "boothAir": { "part": "sht4x", "source": "real" } }, "light": { "source": "real" } }""";

    private readonly string _file = Path.GetTempFileName();

    public void Dispose() => File.Delete(_file);

    [Fact]
    public async Task ConfigCheck_RealPartAndLightWithTheRestLeftOut_NamesBoth()
    {
        CommandResult result = await Check(OneRealPart);

        Assert.Equal(2, result.ExitCode);
        Assert.Contains("sensors:intakeAir, sensors:piece, sensors:exhaust, sensors:filter are emulated beside sensors:boothAir, which is real; ", result.Error, StringComparison.Ordinal);
        Assert.Contains("light:source is real, and sensors:intakeAir, sensors:piece, sensors:exhaust, sensors:filter are emulated; ", result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task ConfigCheck_RealLightOverTheDemo_IsRefused()
    {
        CommandResult result = await Check("""{ "light": { "source": "Real" } }""");

        Assert.Equal(2, result.ExitCode);
        Assert.StartsWith("light:source is Real, and sensors:boothAir, ", result.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("""{ "sensors": { "proving": true }, "light": { "source": "real" } }""")]
    [InlineData("""{ "sensors": { "proving": true, "boothAir": { "part": "sht4x", "source": "real" } }, "light": { "source": "real" } }""")]
    [InlineData("""
        { "sensors": {
            "boothAir": { "part": "sht4x", "source": "real" }, "intakeAir": { "part": "none" }, "piece": { "part": "typed" },
            "exhaust": { "part": "contact", "source": "real" }, "filter": { "part": "none" } } }
        """)]
    public async Task ConfigCheck_WhileProvingOrWithoutLamps_IsGood(string json) => Assert.Equal(0, (await Check(json)).ExitCode);

    private async Task<CommandResult> Check(string json)
    {
        await File.WriteAllTextAsync(_file, json);
        return await CommandRun.With(["config", "check", "--config", _file]);
    }
}
