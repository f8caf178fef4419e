using System.Globalization;
using BoothWatch.Service.Outputs.Series;
using Microsoft.Extensions.Logging.Abstractions;

namespace BoothWatch.Service.Tests.Outputs.Series;

/// <summary>
/// The entry point of this assembly, used only as the process that the crash test kills: it journals without pause
/// and prints the number of each row after its transaction has returned.
/// </summary>
internal static class JournalWriterProcess
{
    public const string Command = "write-journal";

    public static async Task<int> Main(string[] args)
    {
        if (args is [Jobs.JobWriter.Command, string jobsPath])
        {
            return await Jobs.JobWriter.Run(jobsPath);
        }

        if (args is [Checks.CheckWriter.Command, string checksPath])
        {
            return await Checks.CheckWriter.Run(checksPath);
        }

        if (args is [Alerts.AlertSender.Command, string alertsPath, string url])
        {
            return await Alerts.AlertSender.Run(alertsPath, url);
        }

        if (args is [Setup.SettingsWriter.Command, string file])
        {
            return await Setup.SettingsWriter.Run(file);
        }

        if (args is not [Command, string path])
        {
            return 0;
        }

        using var journal = new Journal(
            new JournalLocation(path, IsDemo: false), TimeSpan.FromSeconds(10), TimeProvider.System, NullLogger<Journal>.Instance);
        var output = new SeriesOutput(journal, new SeriesOptions(), TimeProvider.System);
        await using var acknowledged = new StreamWriter(Console.OpenStandardOutput()) { AutoFlush = true };
        for (long row = 1; ; row++)
        {
            double wave = Math.Sin(row / 50.0);
            await output.HandleAsync(
                TestAssessment.At(TimeProvider.System.GetUtcNow(), temperatureC: 21 + wave, marginC: row % 7 == 0 ? null : 6 - wave),
                CancellationToken.None);
            await acknowledged.WriteLineAsync(row.ToString(CultureInfo.InvariantCulture));
        }
    }
}
