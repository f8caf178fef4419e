namespace BoothWatch.Service.Tests.Commands;

public class CommandLineTests
{
    [Theory]
    [InlineData("advize", "'advize' is not a command; did you mean advise?")]
    [InlineData("frobnicate", "'frobnicate' is not a command; known: advise, config, lamps, run, sensors")]
    [InlineData("config", "config needs to know what to do: config check")]
    [InlineData("config chek", "'chek' is not a command; did you mean check?")]
    [InlineData("run --confg x", "--confg is not an argument of run; did you mean --config?")]
    [InlineData("config check --config", "--config has no value; give one, for example --config config/boothwatch.json")]
    [InlineData("config check --config a --config b", "--config is given 2 times; give it once")]
    [InlineData("lamps --seconds", "--seconds is empty; give one time from 1 to 60 s, for example --seconds 5")]
    [InlineData("lamps --seconds 0.5", "--seconds is 0.5; give one time from 1 to 60 s, for example --seconds 5")]
    [InlineData("lamps --seconds NaN", "--seconds is NaN; give one time from 1 to 60 s, for example --seconds 5")]
    [InlineData("lamps --seconds 5 --seconds 6", "--seconds is 5 and 6; give one time from 1 to 60 s, for example --seconds 5")]
    [InlineData("lamps --pin 17", "--pin is not an argument of lamps; known: --config, --seconds")]
    [InlineData("advise --temprature 24 --humidity 50", "--temprature is not an argument of advise; did you mean --temperature?")]
    [InlineData("advise --temprature=24", "--temprature is not an argument of advise; did you mean --temperature?")]
    [InlineData("advise 24", "'24' is not expected here: every value of advise follows the name of its argument, for example --temperature 24C --humidity 55%")]
    [InlineData("advise --temperature", "--temperature: it has no value; give a temperature from -15 to 55 °C (5 to 131 °F); units C (default), F, K, for example 24C")]
    [InlineData("advise --temperature 24 --temperature 25 --humidity 50", "--temperature: it is given more than once; give a temperature from -15 to 55 °C (5 to 131 °F); units C (default), F, K, for example 24C")]
    [InlineData("advise --temperature 24 --humidity 155%", "--humidity is '155%': out of range; give a relative humidity from 1 to 100 %; percent only, with or without the % sign, for example 55%")]
    [InlineData("advise --temperature 24 --humidity 50 --table", "--table: it has no value; give a CSV file or - for standard input, for example --table airs.csv")]
    public async Task WrongCommandLine_NamesTheMistakeOnStandardError_AndReturns2(string line, string message)
    {
        CommandResult result = await CommandRun.With(line);

        Assert.Equal(2, result.ExitCode);
        Assert.Equal(message, result.Error.Split('\n')[0]);
        Assert.Empty(result.Out);
    }

    [Theory]
    [InlineData("--help", "Commands:")]
    [InlineData("advise --help", "--wet-film <number>")]
    [InlineData("sensors -h", "Exit code 0 when all answer")]
    [InlineData("config check --help", "the fix")]
    [InlineData("lamps --help", "no verdict")]
    public async Task Help_IsPrinted_AndReturns0(string line, string says)
    {
        CommandResult result = await CommandRun.With(line);

        Assert.Equal((0, ""), (result.ExitCode, result.Error));
        Assert.Contains(says, result.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task AdviseHelp_StatesDefaultAndExampleOfEveryArgument()
    {
        CommandResult result = await CommandRun.With("advise --help");

        string[] lines = [.. result.Out.Split('\n').Where(text => text.TrimStart().StartsWith("--", StringComparison.Ordinal))];
        Assert.Equal(Service.Advice.AdviseArguments.All.Count, lines.Count(text => text.Contains("Default: ", StringComparison.Ordinal) && text.Contains("Example: --", StringComparison.Ordinal)));
    }
}
