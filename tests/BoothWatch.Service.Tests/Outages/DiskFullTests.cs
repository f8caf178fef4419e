using System.Globalization;
using System.Text.Json;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Tests.Outputs.Series;
using Microsoft.Data.Sqlite;
using Xunit.Abstractions;

namespace BoothWatch.Service.Tests.Outages;

/// <summary>The disk of the journal fills up under the real program.</summary>
public sealed class DiskFullTests(ITestOutputHelper output)
{
    [SmallDiskFact]
    public async Task Disk_ThatIsFull_StopsTheJournalOnlyAndIsSaidAndRecovers()
    {
        using var disk = new SmallDisk();
        await using BoothProcess booth = await BoothProcess.StartAsync(disk.Folder);
        await booth.UntilAsync("/api/health", health => Handled(health) >= 3);

        disk.Fill();
        JsonElement full = await booth.UntilAsync("/api/health", health => !Working(health));
        string error = BoothProcess.OutputOf(full, "series").GetProperty("lastError").GetString()!;
        Assert.Contains("full", error, StringComparison.Ordinal);
        Assert.Contains("free space", error, StringComparison.Ordinal);

        // The loop and the light go on: ten more assessments while nothing can be written.
        JsonElement now = await booth.UntilAsync("/api/now", answer => !answer.GetProperty("stale").GetBoolean());
        DateTimeOffset from = Time(now);
        now = await booth.UntilAsync("/api/now", answer => Time(answer) >= from.AddSeconds(10));
        JsonElement[] lines = [.. now.GetProperty("outputs").EnumerateArray()];
        Assert.True(lines.Single(line => line.GetProperty("name").GetString() == "light").GetProperty("working").GetBoolean());
        JsonElement series = lines.Single(line => line.GetProperty("name").GetString() == "series");
        Assert.False(series.GetProperty("working").GetBoolean());
        Assert.Contains("free space", series.GetProperty("detail").GetString(), StringComparison.Ordinal);

        disk.Free();
        JsonElement healed = await booth.UntilAsync("/api/health", health =>
            Working(health) && BoothProcess.OutputOf(health, "series").GetProperty("backlog").GetInt64() == 0);
        Assert.Equal(0, BoothProcess.OutputOf(healed, "series").GetProperty("dropped").GetInt64());
        output.WriteLine($"{BoothProcess.OutputOf(healed, "series").GetProperty("failures").GetInt64()} failed attempts; nothing dropped; error: {error}");
        await booth.KillAsync();

        // Not one second is missing, though some were written late.
        using var file = new SqliteConnection($"Data Source={Path.Combine(disk.Folder, JournalLocation.DemoFileName)};Pooling=False");
        file.Open();
        Assert.Equal("ok", JournalFolder.Ask<string>(file, "PRAGMA integrity_check"));
        Assert.True(JournalFolder.Ask<long>(file, "SELECT count(*) FROM reading") >= 13);
        Assert.Equal(
            JournalFolder.Ask<long>(file, "SELECT count(*) FROM reading"), JournalFolder.Ask<long>(file, "SELECT max(id) FROM reading"));
    }

    private static long Handled(JsonElement health) => BoothProcess.OutputOf(health, "series").GetProperty("handled").GetInt64();

    private static bool Working(JsonElement health) => BoothProcess.OutputOf(health, "series").GetProperty("working").GetBoolean();

    private static DateTimeOffset Time(JsonElement now) =>
        DateTimeOffset.Parse(now.GetProperty("time").GetString()!, CultureInfo.InvariantCulture);
}
