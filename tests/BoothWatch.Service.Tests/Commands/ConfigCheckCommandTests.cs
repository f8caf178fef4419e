namespace BoothWatch.Service.Tests.Commands;

public sealed class ConfigCheckCommandTests : IDisposable
{
    private readonly string _path = Path.GetTempFileName();

    public void Dispose() => File.Delete(_path);

    [Fact]
    public async Task ShippedConfiguration_IsGood()
    {
        string path = Path.Combine(RepositoryFile.Root, "config", "boothwatch.json");

        CommandResult result = await CommandRun.With(["config", "check", "--config", path]);

        Assert.Equal("", result.Error);
        Assert.Equal((0, $"configuration is good ({path})\n"), (result.ExitCode, result.Out));
    }

    [Fact]
    public async Task WrongConfiguration_PrintsEveryErrorOnStandardError_AndReturns2()
    {
        await File.WriteAllTextAsync(_path, """{ "booth": { "nmae": "north", "altitudeM": 9000 } }""");

        CommandResult result = await CommandRun.With(["config", "check", "--config", _path]);

        Assert.Equal((2, ""), (result.ExitCode, result.Out));
        Assert.Equal(
            $"""
            booth:nmae is not a setting; did you mean name?
            booth:altitudeM is 9000; give a height from -430 to 5000 m, for example 120
            configuration is not good: 2 errors ({_path})

            """,
            result.Error);
    }
}
