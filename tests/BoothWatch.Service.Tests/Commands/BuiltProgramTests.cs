using System.Net;
using System.Net.Sockets;
using BoothWatch.Service.Commands;
using BoothWatch.Service.Outputs.Light;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Tests.Advice;

namespace BoothWatch.Service.Tests.Commands;

public sealed class BuiltProgramTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("boothwatch").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Advise_AnswersFromAnyFolder_InUtf8()
    {
        using var program = new BuiltProgram(_folder, "advise", "--temperature", "24C", "--humidity", "60%", "--json");

        CommandResult result = await program.EndAsync();

        Assert.Equal((0, ""), (result.ExitCode, result.Error));
        Assert.True(AdviseSchema.Accepts(result.Out), result.Out);
        Assert.Contains("°C", result.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task AdviseTable_AnswersARowWhileThePipeIsOpen()
    {
        using var program = new BuiltProgram(_folder, "advise", "--table", "-", "--json");

        await program.In.WriteAsync("temperature,humidity\n22,45\n");
        await program.In.FlushAsync();
        string first = await program.ReadLineAsync();
        await program.In.WriteAsync("22,145\n");
        CommandResult rest = await program.EndAsync();

        Assert.True(AdviseSchema.Accepts(first), first);
        Assert.Equal((1, ""), (rest.ExitCode, rest.Error));
        Assert.Contains("\"field\":\"humidity\"", rest.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task WrongArgument_Returns2_WithNothingOnStandardOutput()
    {
        using var program = new BuiltProgram(_folder, "advise", "--temperature", "24R");

        CommandResult result = await program.EndAsync();

        Assert.Equal((2, ""), (result.ExitCode, result.Out));
        Assert.Contains("--temperature is '24R': 'R' is not a unit of it; ", result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_OnAPinThatAnotherProgramDrives_IsRefused()
    {
        if (!OperatingSystem.IsLinux())
        {
            return;
        }

        // Pins that no other test claims; whoever holds one, the program must not run.
        using PinClaim held = PinClaim.Take(new LightOptions { Source = "real", GreenPin = 50, YellowPin = 51, RedPin = 52 });
        string path = Path.Combine(_folder, "boothwatch.json");
        await File.WriteAllTextAsync(path, """{ "sensors": { "proving": true }, "mqtt": { "use": "off" }, "light": { "source": "real", "greenPin": 50, "yellowPin": 51, "redPin": 52 } }""");
        using var program = new BuiltProgram(_folder, "run", "--config", path);

        CommandResult result = await program.EndAsync();

        Assert.Equal(2, result.ExitCode);
        Assert.StartsWith("BoothWatch cannot start: GPIO 50 (light:greenPin) is driven by another BoothWatch on this machine", result.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("INT")]
    [InlineData("TERM")]
    public async Task NoCommand_RunsTheBooth_UntilItIsAskedToStop_AndLeavesTheLightAtWait(string signal)
    {
        using var program = new BuiltProgram(_folder);

        string line;
        do
        {
            line = await program.ReadLineAsync();
        }
        while (!line.Contains("Verdict wait", StringComparison.Ordinal));
        program.Signal(signal);
        CommandResult result = await program.EndAsync();

        Assert.Equal((0, ""), (result.ExitCode, result.Error));
        Assert.Contains("The light shows wait: BoothWatch stops", result.Out, StringComparison.Ordinal);
        Assert.Contains("BoothWatch stops, as it was asked to", result.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_WithAWrongConfiguration_DoesNotStart()
    {
        string config = Path.Combine(_folder, "wrong.json");
        await File.WriteAllTextAsync(config, """{ "light": { "greenPin": 99, "gren": 1 } }""");
        using var program = new BuiltProgram(_folder, "run", "--config", config);

        CommandResult result = await program.EndAsync();

        Assert.Equal((2, ""), (result.ExitCode, result.Out));
        Assert.Contains("light:gren is not a setting; ", result.Error, StringComparison.Ordinal);
        Assert.Contains("light:greenPin is 99; ", result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_WhereThePageCannotListen_SaysSoInOneLineAndFails()
    {
        using var taken = new TcpListener(IPAddress.Loopback, 0);
        taken.Start();
        using var program = new BuiltProgram(_folder, new Uri($"http://{taken.LocalEndpoint}"), "run");

        CommandResult result = await program.EndAsync();

        Assert.Equal(ExitCode.Failed, result.ExitCode);
        string line = Assert.Single(result.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries));
        Assert.StartsWith("BoothWatch cannot start: ", line, StringComparison.Ordinal);
        Assert.Contains("page:url", line, StringComparison.Ordinal);
        Assert.Contains(taken.LocalEndpoint.ToString()!, line, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", result.Out, StringComparison.Ordinal);
        Assert.False(File.Exists(Path.Combine(_folder, JournalLocation.DemoFileName)), "the failed start has opened the journal");
    }

    [Fact]
    public async Task Run_AtAnAddressThatTheMachineLacks_SaysSoInOneLine_AndReturns2()
    {
        // 192.0.2.0/24 is given to no machine (RFC 5737, TEST-NET-1).
        using var program = new BuiltProgram(_folder, new Uri("http://192.0.2.1:5080"), "run");

        CommandResult result = await program.EndAsync();

        Assert.Equal((ExitCode.Wrong, ""), (result.ExitCode, result.Out));
        string line = Assert.Single(result.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("this machine has no such address", line, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_WhileAnotherRunsWithTheFolder_EndsAtOnce_AndLeavesItAlone_UntilThatOneIsKilled()
    {
        using var first = new BuiltProgram(_folder);
        string line;
        do
        {
            line = await first.ReadLineAsync();
        }
        while (!line.Contains("Verdict wait", StringComparison.Ordinal));

        // Port 0: the page of the second would find a port; only the folder is shared.
        using var second = new BuiltProgram(_folder, "run");
        CommandResult result = await second.EndAsync();

        Assert.Equal((ExitCode.Wrong, ""), (result.ExitCode, result.Out));
        string says = Assert.Single(result.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains($"another BoothWatch already runs with the folder {_folder}; stop it first, or give", says, StringComparison.Ordinal);

        first.Signal("KILL");
        await first.EndAsync();
        using RunClaim free = RunClaim.Take(_folder);
        Assert.Equal((null, null), (free.Refusal, free.Doubt));
    }

    [Fact]
    public void Run_WithAnotherFailure_DoesNotBlameThePage() => Assert.Equal(
        "BoothWatch cannot start: No space left on device",
        RunCommand.Explain(new IOException("No space left on device"), "http://127.0.0.1:5080"));
}
