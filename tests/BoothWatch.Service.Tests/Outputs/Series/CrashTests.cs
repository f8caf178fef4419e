using System.Diagnostics;
using System.Globalization;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Tests.Outputs.Series;

/// <summary>Kills a real writing process with SIGKILL at random moments and looks at what it left.</summary>
public sealed class CrashTests
{
    [Fact]
    public async Task Journal_WhoseWriterIsKilledInMidWrite_KeepsEveryAcknowledgedRow()
    {
        using var folder = new JournalFolder();
        var random = new Random(20260907);
        long rowsBefore = 0;
        for (int kill = 1; kill <= 6; kill++)
        {
            long acknowledged = await WriteUntilKilledAsync(folder.Location.Path, TimeSpan.FromMilliseconds(random.Next(20, 400)));

            using SqliteConnection connection = folder.Look();
            Assert.Equal("ok", JournalFolder.Ask<string>(connection, "PRAGMA integrity_check"));
            long rows = JournalFolder.Ask<long>(connection, "SELECT count(*) FROM reading");
            Assert.Equal(rows, JournalFolder.Ask<long>(connection, "SELECT max(id) FROM reading"));

            // At most the one transaction that was being acknowledged may be there beyond what was printed.
            Assert.InRange(rows - rowsBefore, acknowledged, acknowledged + 1);
            Assert.Equal(kill, JournalFolder.Ask<long>(connection, "SELECT count(*) FROM verdict_change"));
            MinuteCheck.EqualsRecomputation(connection);
            rowsBefore = rows;
        }

        Assert.True(rowsBefore > 100, $"the writer wrote only {rowsBefore} rows: the kills proved little");
    }

    private static async Task<long> WriteUntilKilledAsync(string path, TimeSpan after)
    {
        var start = new ProcessStartInfo(Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") ?? "dotnet")
        {
            ArgumentList = { typeof(JournalWriterProcess).Assembly.Location, JournalWriterProcess.Command, path },
            RedirectStandardOutput = true,
        };
        using Process writer = Process.Start(start)!;
        try
        {
            string? line = await writer.StandardOutput.ReadLineAsync().WaitAsync(TimeSpan.FromSeconds(60));
            Assert.NotNull(line);
            Task<string> rest = writer.StandardOutput.ReadToEndAsync();
            await Task.Delay(after, TimeProvider.System);
            Assert.False(writer.HasExited, "the writer ended by itself");
            writer.Kill();
            await writer.WaitForExitAsync();

            // The last line may be cut: only whole lines are acknowledgements.
            string all = line + "\n" + await rest;
            string[] whole = all[..all.LastIndexOf('\n')].Split('\n');
            return long.Parse(whole[^1], CultureInfo.InvariantCulture);
        }
        finally
        {
            if (!writer.HasExited)
            {
                writer.Kill();
            }
        }
    }
}
