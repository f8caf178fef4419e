using BoothWatch.Service.Configuration;
using BoothWatch.Service.Tests.Commands;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Tests.Configuration;

public sealed class SharedPinValidatorTests : IDisposable
{
    private readonly string _file = Path.GetTempFileName();

    public void Dispose() => File.Delete(_file);

    [Theory]
    [InlineData("""{ "light": { "greenPin": 23 } }""", "light:greenPin is 23, and so is sensors:exhaust:pin; give each its own GPIO number")]
    [InlineData("""{ "light": { "buzzerPin": 23 } }""", "light:buzzerPin is 23, and so is sensors:exhaust:pin; give each its own GPIO number")]
    [InlineData(
        """{ "sensors": { "exhaust": { "part": "contact", "source": "real", "pin": 22 } }, "light": { "source": "Real" } }""",
        "light:redPin is 22, and so is sensors:exhaust:pin; give each its own GPIO number")]
    [InlineData(
        """{ "sensors": { "exhaust": { "part": "contact", "pin": 27 }, "filter": { "part": "barometer" } } }""",
        "light:yellowPin is 27, and so is sensors:exhaust:pin; give each its own GPIO number")]
    public void SharedPin_OfOneSource_IsNamedWithBothKeys(string json, string error) => Assert.Contains(error, Errors(json));

    [Theory]
    [InlineData("""{ "sensors": { "proving": true }, "light": { "source": "real", "greenPin": 23 } }""")]
    [InlineData("""{ "sensors": { "exhaust": { "part": "none" } }, "light": { "greenPin": 23 } }""")]
    [InlineData("""{ "sensors": { "exhaust": { "part": "contact", "pin": 24 } }, "light": { "greenPin": 23 } }""")]
    [InlineData("""{ "sensors": { "proving": true, "piece": { "part": "typed", "pin": 17 } } }""")]
    public void PinNumber_ThatIsNotShared_IsGood(string json) => Assert.Empty(Errors(json));

    [Fact]
    public async Task Run_WithASharedPin_DoesNotStart()
    {
        await File.WriteAllTextAsync(_file, """{ "light": { "greenPin": 23 } }""");

        CommandResult result = await CommandRun.With(["run", "--config", _file]);

        Assert.Equal(2, result.ExitCode);
        Assert.StartsWith("light:greenPin is 23, and so is sensors:exhaust:pin; ", result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Host_WithASharedPin_RefusesItsLight()
    {
        await File.WriteAllTextAsync(_file, """{ "light": { "greenPin": 23 } }""");

        // The page asks for the light while the host is built.
        Assert.Throws<OptionsValidationException>(() => BoothHost.Build(ConfigurationFile.Read(_file)));
    }

    private IReadOnlyList<string> Errors(string json)
    {
        File.WriteAllText(_file, json);
        return ConfigurationCheck.Errors(ConfigurationFile.Read(_file));
    }
}
