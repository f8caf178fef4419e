using System.Diagnostics;
using System.Globalization;
using BoothWatch.Service.Outputs.Pump;
using BoothWatch.Service.Tests.Outputs.Influx;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Tests.Outages;

/// <summary>
/// Two booths: of one every output is up, of the other every one is down. <see cref="SettleAsync"/> and <see cref="Check"/> see to it
/// that they really are.
/// </summary>
/// <remarks>
/// The journal that is down is of a newer version: nothing can be written, and the rows in it can be read, so that there is
/// something to ship and the dead database is really tried. Where the folder itself is impossible nothing would be shipped.
/// </remarks>
internal sealed class TickPair : IAsyncDisposable
{
    private static readonly TimeSpan Limit = TimeSpan.FromSeconds(120);

    private readonly DirectoryInfo _folder;
    private readonly StubServer _database;
    private (long Mqtt, long Influx, long Series) _handled;
    private int _withoutFilm;

    private TickPair(DirectoryInfo folder, StubServer database, TickRig up, TickRig down) =>
        (_folder, _database, Up, Down) = (folder, database, up, down);

    public TickRig Up { get; }

    public TickRig Down { get; }

    public static async Task<TickPair> StartAsync()
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("boothwatch-ticks-");
        StubServer database = await StubServer.StartAsync();
        TickRig up = await TickRig.StartAsync(
            ("series:folder", folder.CreateSubdirectory("up").FullName),
            ("influx:url", database.Url), ("influx:everyS", "0.1"),
            ("mqtt:broker:port", Port()));
        string dead = folder.CreateSubdirectory("down").FullName;
        await FillAndSpoilAsync(dead);
        TickRig down = await TickRig.StartAsync(
            ("series:folder", dead),
            ("influx:url", $"http://127.0.0.1:{Port()}"), ("influx:everyS", "0.1"), ("influx:longestRetryS", "0.1"),
            ("mqtt:use", "external"), ("mqtt:host", "127.0.0.1"), ("mqtt:port", Port()), ("mqtt:firstRetryS", "0.1"), ("mqtt:longestRetryS", "0.1"));
        return new TickPair(folder, database, up, down);
    }

    /// <summary>Turns both until every output of one has worked and every output of the other has failed.</summary>
    public async Task SettleAsync()
    {
        long start = Stopwatch.GetTimestamp();
        while (Trouble() is { } trouble)
        {
            if (Stopwatch.GetElapsedTime(start) > Limit)
            {
                throw new TimeoutException(trouble);
            }

            Up.TickMs();
            Down.TickMs();
            await Task.Delay(TimeSpan.FromMilliseconds(20), TimeProvider.System);
        }

        _handled = (Up.Health("mqtt").Handled, Up.Health("influx").Handled, Up.Health("series").Handled);
        _withoutFilm = Up.WithoutFilm + Down.WithoutFilm;
    }

    /// <summary>What is wrong with the pair after measuring, in words; null when one is up, the other down, and both have asked the film each time.</summary>
    public string? Check() =>
        Trouble()
        ?? (Up.Health("mqtt").Handled > _handled.Mqtt && Up.Health("series").Handled > _handled.Series && Up.Health("influx").Handled > _handled.Influx
            ? null : "an output of the booth that is up did nothing meanwhile")
        ?? (Up.WithoutFilm + Down.WithoutFilm == _withoutFilm ? null : $"the film was not asked each time: {Up.WithoutFilm} and {Down.WithoutFilm} times not");

    public async ValueTask DisposeAsync()
    {
        await Up.DisposeAsync();
        await Down.DisposeAsync();
        await _database.DisposeAsync();
        _folder.Delete(recursive: true);
    }

    private string? Trouble()
    {
        foreach (string output in (string[])["mqtt", "influx", "series"])
        {
            (OutputHealth up, OutputHealth down) = (Up.Health(output), Down.Health(output));
            if (up is not { IsFailing: false, Handled: > 0 })
            {
                return $"{output} was to be up: {up}";
            }

            if (down is not { IsFailing: true, Handled: 0 })
            {
                return $"{output} was to be down: {down}";
            }
        }

        return null;
    }

    private static async Task FillAndSpoilAsync(string folder)
    {
        await using (TickRig rig = await TickRig.StartAsync(("series:folder", folder), ("mqtt:use", "off")))
        {
            long start = Stopwatch.GetTimestamp();
            while (rig.Health("series").Handled < 3)
            {
                if (Stopwatch.GetElapsedTime(start) > Limit)
                {
                    throw new TimeoutException($"no journal to spoil: {rig.Health("series")}");
                }

                rig.TickMs();
                await Task.Delay(TimeSpan.FromMilliseconds(20), TimeProvider.System);
            }
        }

        using SqliteConnection journal = new($"Data Source={Directory.GetFiles(folder, "*.db").Single()};Pooling=false");
        journal.Open();
        using SqliteCommand newer = journal.CreateCommand();
        newer.CommandText = "PRAGMA user_version = 999";
        newer.ExecuteNonQuery();
    }

    private static string Port() => VictoriaMetrics.FreePort().ToString(CultureInfo.InvariantCulture);
}
