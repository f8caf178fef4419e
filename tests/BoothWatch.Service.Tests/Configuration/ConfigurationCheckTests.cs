using BoothWatch.Service.Configuration;

namespace BoothWatch.Service.Tests.Configuration;

public class ConfigurationCheckTests
{
    [Fact]
    public void NoSettings_IsGood() => Assert.Empty(Errors("{}"));

    [Theory]
    [InlineData("""{ "boot": { "name": "north" } }""", "boot is not a section; did you mean booth?")]
    [InlineData("""{ "booth": { "nmae": "north" } }""", "booth:nmae is not a setting; did you mean name?")]
    [InlineData("""{ "booth": { "altitudeM": "high" } }""", "booth:altitudeM is \"high\"; give a number, for example 0")]
    [InlineData("""{ "booth": { "altitudeM": "NaN" } }""", "booth:altitudeM is \"NaN\"; give a number, for example 0")]
    [InlineData("""{ "booth": { "altitudeM": 9000 } }""", "booth:altitudeM is 9000; give a height from -430 to 5000 m, for example 120")]
    [InlineData("""{ "booth": { "name": "" } }""", "booth:name is \"\"; give a name of 1 to 60 characters, for example \"corner\"")]
    [InlineData("""{ "booth": { "name": { "first": "north" } } }""", "booth:name holds settings or a list; give a text, for example corner")]
    [InlineData("""{ "booth": { "temperatureUnit": "K" } }""", "booth:temperatureUnit is \"K\"; give C or F, for example C")]
    [InlineData("""{ "booth": "north" }""", "booth is \"north\"; it holds settings: write \"booth\": { ... }")]
    [InlineData("""{ "coat": { "kind": "gloss" } }""", "coat:kind is \"gloss\"; give one of flash, clear, colour, sealer, for example clear")]
    [InlineData("""{ "coat": { "kind": "7" } }""", "coat:kind is \"7\"; give one of flash, clear, colour, sealer, for example clear")]
    [InlineData("""{ "coat": { "retarderStepPct": [1] } }""", "coat:retarderStepPct holds settings or a list; give a number, for example 1")]
    [InlineData("""{ "logging": { "level": "chatty" } }""", "logging:level is \"chatty\"; give one of verbose, debug, information, warning, error, fatal, for example information")]
    [InlineData("""{ "booth": { "name": null } }""", "booth:name is null; give a text, for example corner, or leave it out")]
    [InlineData("""{ "demo": { "fault": { "sensor": null } } }""", "demo:fault:sensor is null; give a text, or leave it out")]
    [InlineData("""{ "light": { "source": null } }""", "light:source is null; give a text, for example emulated, or leave it out")]
    public void WrongSetting_IsNamedWithValueAndFix(string json, string error) => Assert.Equal([error], Errors(json));

    [Theory]
    [InlineData("""{ "verdict": { "temperatureUnit": "Fahrenheit" } }""", "verdict:temperatureUnit is not a setting; ")]
    [InlineData("""{ "page": { "temperatureUnit": "F" } }""", "page:temperatureUnit is not a setting; ")]
    [InlineData("""{ "booth": { "unit": "Fahrenheit" } }""", "booth:unit is not a setting; ")]
    public void TemperatureUnit_AnywhereButInTheBooth_IsUnknown(string json, string start) =>
        Assert.StartsWith(start, Assert.Single(Errors(json)), StringComparison.Ordinal);

    [Fact]
    public void SeveralErrors_AreAllReportedAtOnce()
    {
        IReadOnlyList<string> errors = Errors("""{ "boot": {}, "booth": { "altitudeM": "x", "name": "", "colour": 1 }, "coat": { "kind": "gloss" } }""");

        Assert.Equal(
            ["boot ", "booth:altitudeM ", "booth:colour ", "booth:name ", "coat:kind "],
            errors.Select(error => error[..(error.IndexOf(' ', StringComparison.Ordinal) + 1)]).Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("""{ "coat": { "wetFilmUm": null } }""")]
    [InlineData("""{ "booth": { "altitudeM": null } }""")]
    [InlineData("""{ "demo": { "fault": null } }""")]
    [InlineData("""{ "demo": { "fault": {} } }""")]
    [InlineData("""{ "sensors": { "piece": null } }""")]
    [InlineData("""{ "light": { "greenPin": null, "buzzerPin": null } }""")]
    [InlineData("""{ "light": null, "verdict": {} }""")]
    public void NullSetting_KeepsTheDefault(string json) => Assert.Empty(Errors(json));

    private static IReadOnlyList<string> Errors(string json)
    {
        string path = Path.GetTempFileName();
        try
        {
            File.WriteAllText(path, json);
            return ConfigurationCheck.Errors(ConfigurationFile.Read(path));
        }
        finally
        {
            File.Delete(path);
        }
    }
}
