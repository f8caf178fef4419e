using BoothWatch.Service.Outlook;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Page;
using BoothWatch.Service.Tests.Jobs;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;

namespace BoothWatch.Service.Tests.Outlook;

/// <summary>A service whose journal has earlier days, and an outlook made from them now.</summary>
public static class OutlookSample
{
    /// <summary>The scripted shop at its real pace on a dry morning, without its invented days.</summary>
    public static readonly (string Key, string Value)[] Morning = [("outlook:demoPast", "false"), ("demo:dayLengthS", "32400"), ("demo:startAt", "08:30")];

    /// <summary>Fills the journal with days before today, ten minutes a row.</summary>
    /// <param name="path">The journal.</param>
    /// <param name="days">How many.</param>
    /// <param name="dewPointC">The dew point by day (1 is yesterday) and local hour, °C; null: nothing on record.</param>
    public static void Fill(string path, int days, Func<int, double, double?> dewPointC)
    {
        using SqliteConnection connection = new($"Data Source={path};Pooling=False");
        connection.Open();
        using SqliteTransaction transaction = connection.BeginTransaction();
        using SqliteCommand row = connection.CreateCommand();
        string[] others = ["booth_humidity_pct", "piece_temperature_c", "blush_margin_c", "lowest_film_temperature_c"];
        row.CommandText = $"""
            INSERT OR IGNORE INTO minute (minute_ms, count, worst_verdict, booth_temperature_c_n, booth_temperature_c_mean, dew_point_c_n, dew_point_c_mean,
                {string.Join(", ", others.Select(other => other + "_n"))}) VALUES ($at, 60, 2, 60, 22, 60, $dew, 0, 0, 0, 0)
            """;
        SqliteParameter at = row.Parameters.Add("$at", SqliteType.Integer);
        SqliteParameter dew = row.Parameters.Add("$dew", SqliteType.Real);
        TimeZoneInfo zone = TimeProvider.System.LocalTimeZone;
        DateTime today = TimeZoneInfo.ConvertTime(TimeProvider.System.GetUtcNow(), zone).Date;
        for (int back = 1; back <= days; back++)
        {
            for (int slot = 0; slot < 144; slot++)
            {
                DateTime local = today.AddDays(-back).AddMinutes(10 * slot);
                if (!zone.IsInvalidTime(local) && dewPointC(back, slot / 6.0) is { } value)
                {
                    at.Value = new DateTimeOffset(local, zone.GetUtcOffset(local)).ToUnixTimeMilliseconds();
                    dew.Value = value;
                    row.ExecuteNonQuery();
                }
            }
        }

        transaction.Commit();
    }

    /// <summary>A shop whose air grows damper from late morning on, a little otherwise each day, and on every sixth not at all.</summary>
    public static double Wetter(int back, double hour) => back % 6 == 5
        ? 8
        : 8 + (back % 7 * 0.5) + ((5.6 + (0.8 * (back % 5))) * Math.Clamp((hour - 10 - (back % 3)) / 3, 0, 1));

    /// <summary>Makes the outlook, as soon as the booth air is known.</summary>
    public static async Task Make(JobHost host)
    {
        PageFeed feed = host.Services.GetRequiredService<PageFeed>();
        using CancellationTokenSource late = new(TimeSpan.FromSeconds(120));
        while (feed.Current.Assessment?.Film is null)
        {
            await Task.Delay(TimeSpan.FromMilliseconds(50), TimeProvider.System, late.Token);
        }

        host.Services.GetRequiredService<OutlookKeeper>().Renew(CancellationToken.None);
    }

    /// <summary>A running service with so many earlier days, and its outlook.</summary>
    public static async Task<JobHost> Start(int days, Func<int, double, double?> dewPointC, params (string Key, string Value)[] settings)
    {
        JobHost host = await JobHost.Start([.. Morning, .. settings]);
        Fill(host.Services.GetRequiredService<JournalLocation>().Path, days, dewPointC);
        await Make(host);
        return host;
    }
}
