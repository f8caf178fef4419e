using System.CommandLine;
using System.Net.Sockets;
using BoothWatch.Service.Access;
using BoothWatch.Service.Configuration;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Page;

namespace BoothWatch.Service.Commands;

/// <summary><c>run</c>: the booth itself, until it is stopped.</summary>
internal static partial class RunCommand
{
    public static Command Build(Option<string?> config, CommandStreams streams)
    {
        var command = new Command("run", "Watches the booth: reads the sensors, sets the light, serves the page, until Ctrl-C. This is what happens when no command is given.");
        command.SetAction((parsed, cancel) => RunAsync(parsed.GetValue(config), streams, cancel));
        return command;
    }

    /// <summary>Runs the booth. Ends with <see cref="ExitCode.Good"/> when it was asked to stop, and with <see cref="ExitCode.Failed"/> when it stopped by itself.</summary>
    public static async Task<int> RunAsync(string? configPath, CommandStreams streams, CancellationToken cancellationToken)
    {
        SpareMemory.OneHeap();
        ConfigurationFile file = ConfigurationFile.Read(configPath);
        if (await ConfigCommand.ReportErrorsAsync(file, ConfigurationCheck.Errors(file), streams.Error))
        {
            return ExitCode.Wrong;
        }

        // Before anything is opened: journal, pins and page belong to one program at a time.
        using RunClaim claim = RunClaim.Take(FolderOf(file.Configuration));
        if (claim.Refusal is { } taken)
        {
            await streams.Error.WriteLineAsync($"BoothWatch cannot start: {taken}");
            return ExitCode.Wrong;
        }

        string page = ((PageOptions)ConfigurationSections.Bind(file.Configuration, typeof(PageOptions))).Url;
        if (PageAddress.Probe(page) is { } refused)
        {
            await streams.Error.WriteLineAsync($"BoothWatch cannot start: {PageAddress.ExplainFailure(refused, page) ?? $"page:url is {page}, but the page cannot listen there: {refused.Message}"}");
            return refused.SocketErrorCode == SocketError.AddressAlreadyInUse ? ExitCode.Failed : ExitCode.Wrong;
        }

        if (AccessStart.Refusal(file.Configuration, page, PageAddress.Parse(page)) is { } closed)
        {
            await streams.Error.WriteLineAsync($"BoothWatch cannot start: {closed}");
            return ExitCode.Wrong;
        }

        await using WebApplication host = BoothHost.Build(file);
        ILogger log = host.Services.GetRequiredService<ILoggerFactory>().CreateLogger("BoothWatch");
        LogOrigin(log, file.Origin);
        if (claim.Doubt is { } doubt)
        {
            LogDoubt(log, doubt);
        }

        HashSet<string> defaults = [.. EffectiveConfiguration.Lines(new ConfigurationBuilder().Build())];
        foreach (string setting in EffectiveConfiguration.Lines(file.Configuration))
        {
            LogSetting(log, defaults.Contains(setting) ? LogLevel.Debug : LogLevel.Information, setting);
        }

        // The host stops by itself when one of its parts throws, and would then end with 0: only a request to stop is good.
        bool asked = false;
        using CancellationTokenRegistration stop = cancellationToken.Register(() => asked = true);
        try
        {
            await host.StartAsync(cancellationToken);
        }
        catch (Exception problem) when (problem is IOException or SocketException)
        {
            // What had started already ends in order: the light at wait, the outputs flushed.
            await host.StopAsync(CancellationToken.None);
            await streams.Error.WriteLineAsync(Explain(problem, page));
            return ExitCode.Failed;
        }

        await host.WaitForShutdownAsync(cancellationToken);
        if (asked)
        {
            LogStopped(log);
        }

        return asked ? ExitCode.Good : ExitCode.Failed;
    }

    /// <summary>What to say of a failed start: the setting and the fix where the page could not listen, else only what happened.</summary>
    internal static string Explain(Exception problem, string url) => $"BoothWatch cannot start: {PageAddress.ExplainFailure(problem, url) ?? problem.Message}";

    /// <summary>The folder of the journal, which is what a program claims.</summary>
    internal static string FolderOf(IConfiguration configuration)
    {
        var series = (SeriesOptions)ConfigurationSections.Bind(configuration, typeof(SeriesOptions));
        return Path.GetDirectoryName(JournalLocation.Of(series, isDemo: false).Path)!;
    }

    [LoggerMessage(EventId = 1, Level = LogLevel.Information, Message = "Configuration: read from {Origin}, other settings have their defaults")]
    private static partial void LogOrigin(ILogger logger, string origin);

    // What differs from the defaults is worth reading at every start; the rest is there for who asks.
    [LoggerMessage(EventId = 2, Message = "Configuration: {Setting}")]
    private static partial void LogSetting(ILogger logger, LogLevel level, string setting);

    [LoggerMessage(EventId = 3, Level = LogLevel.Warning, Message = "Whether another BoothWatch runs already is not known: {Doubt}")]
    private static partial void LogDoubt(ILogger logger, string doubt);

    [LoggerMessage(EventId = 4, Level = LogLevel.Information, Message = "BoothWatch stops, as it was asked to")]
    private static partial void LogStopped(ILogger logger);
}
