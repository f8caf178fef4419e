using System.CommandLine;
using System.Globalization;
using System.Net.Sockets;
using BoothWatch.Service.Configuration;
using BoothWatch.Service.Outputs.Light;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Page;
using BoothWatch.Service.Sensors;

namespace BoothWatch.Service.Commands;

/// <summary><c>lamps</c>: shows the pattern of each verdict on the pins of the light, to prove the wiring.</summary>
internal static class LampsCommand
{
    private const double LeastS = 1;
    private const double MostS = 60;
    private const double UsualS = 5;

    private static readonly string[] Sections = [LightOptions.Section, SensorsOptions.Section, SeriesOptions.Section, PageOptions.Section];

    public static Command Build(Option<string?> config, CommandStreams streams)
    {
        var seconds = new Option<string[]>("--seconds")
        {
            Description = "How long each pattern is shown, 1 to 60 s. Default: 5. Example: --seconds 10",
            HelpName = "number",
            Arity = ArgumentArity.ZeroOrMore,
        };
        var command = new Command(
            "lamps",
            "Shows the pattern of each verdict on its own pin, one after the other, then the beeps, and ends with wait. It proves wiring and is no verdict: "
            + "keep the gun away. Stop a running BoothWatch first. Exit code 0 when every pin could be driven, 1 when not, 2 for wrong arguments or while BoothWatch runs.")
        {
            seconds,
        };
        command.SetAction(async (parsed, cancel) =>
        {
            if (Seconds(parsed.GetResult(seconds)?.Tokens.Select(token => token.Value).ToArray()) is not { } each)
            {
                string given = string.Join(" and ", parsed.GetValue(seconds) is { Length: > 0 } values ? values : ["empty"]);
                await streams.Error.WriteLineAsync($"--seconds is {given}; give one time from {LeastS} to {MostS} s, for example --seconds 5");
                await streams.Error.WriteLineAsync("Help: lamps --help");
                return ExitCode.Wrong;
            }

            using GpioSource pins = new(TimeProvider.System);
            return await RunAsync(parsed.GetValue(config), each, pins, TimeProvider.System, streams, cancel);
        });
        return command;
    }

    /// <summary>Runs the show on the pins that a configuration names.</summary>
    internal static async Task<int> RunAsync(
        string? configPath, TimeSpan each, GpioSource pins, TimeProvider time, CommandStreams streams, CancellationToken cancellationToken, string board = PinClaim.ThisBoard)
    {
        // Only what it works with: a password that the service alone is given does not keep anybody from looking at the lamps.
        ConfigurationFile file = ConfigurationFile.Read(configPath);
        if (await ConfigCommand.ReportErrorsAsync(file, ConfigurationCheck.Errors(file, Sections), streams.Error))
        {
            return ExitCode.Wrong;
        }

        string folder = RunCommand.FolderOf(file.Configuration);
        var light = (LightOptions)ConfigurationSections.Bind(file.Configuration, typeof(LightOptions));
        using RunClaim claim = RunClaim.Take(folder);
        using PinClaim lamps = PinClaim.Take(light, board);
        if ((claim.Refusal ?? lamps.Refusal ?? PageInUse(file.Configuration)) is { } refusal)
        {
            await streams.Error.WriteLineAsync($"the lamps belong to a running BoothWatch: {refusal}");
            return ExitCode.Wrong;
        }

        SignalSource source = SignalSourceWord.Parse(light.Source) ?? SignalSource.Emulated;
        await streams.Out.WriteLineAsync(source == SignalSource.Real
            ? "This proves wiring. It is no verdict: keep the gun away until BoothWatch runs again."
            : "light:source is emulated: virtual pins are driven, and no lamp lights up.");
        LampShow show = new(new LampPins(() => pins.Controller(source), light), light, time, streams.Out);
        try
        {
            return await show.RunAsync(each, cancellationToken) ? ExitCode.Good : ExitCode.Failed;
        }
        finally
        {
            if (source == SignalSource.Real)
            {
                await NoteAsync(new LampTrials(folder), show, streams.Out);
            }
        }
    }

    // For the page under Setup, which asks afterwards what was seen.
    private static async Task NoteAsync(LampTrials trials, LampShow show, TextWriter output)
    {
        try
        {
            trials.Keep(show.Trials);
            await output.WriteLineAsync($"noted in {trials.FilePath}: say on the page under Setup which lamps you saw");
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            await output.WriteLineAsync($"not noted for the page under Setup: {trouble.Message}");
        }
    }

    // A service may have been given its folder in another way than this command, but its page is where the configuration says.
    private static string? PageInUse(IConfiguration configuration)
    {
        string url = ((PageOptions)ConfigurationSections.Bind(configuration, typeof(PageOptions))).Url;
        return PageAddress.Probe(url) is { SocketErrorCode: SocketError.AddressAlreadyInUse }
            ? $"something listens at {url} (page:url); stop the service first, for example with systemctl stop boothwatch"
            : null;
    }

    private static TimeSpan? Seconds(string[]? given) => given switch
    {
        null => TimeSpan.FromSeconds(UsualS),
        [string text] when double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double s) && s >= LeastS && s <= MostS => TimeSpan.FromSeconds(s),
        _ => null,
    };
}
