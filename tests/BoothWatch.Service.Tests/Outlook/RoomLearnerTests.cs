using BoothWatch.Outlook;
using BoothWatch.Service.Outlook;
using BoothWatch.Service.Outputs.Series;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Tests.Outlook;

public sealed class RoomLearnerTests : IDisposable
{
    private const double ChangesPerH = 6;
    private static readonly DateOnly Today = new(2026, 6, 30);
    private readonly string _folder = Directory.CreateTempSubdirectory("boothwatch-room-").FullName;

    private JournalLocation Location => new(Path.Combine(_folder, "journal.db"), false);

    // A well-mixed booth by its differential equation, second by second, read every 10 s: 22 °C, with damp air outdoors; the fan comes on at 08:00.
    [Fact]
    public void FanSteps_OfSixDays_TeachTheAirChangeRate()
    {
        Write(6);
        RoomLearner learner = new(new RoomQuery(Location, 101_325));
        Assert.Null(learner.Model);
        for (int i = 0; i < RoomLearner.Days; i++)
        {
            learner.ReadOneDay(Today, CancellationToken.None);
        }

        RoomModel model = learner.Model!;
        Assert.Equal(6, model.Steps);
        Assert.Equal(ChangesPerH, model.ChangesPerH, 0.6);
    }

    [Fact]
    public void ReadingsThatWereNotGood_AreNoPoints()
    {
        Write(6, quality: "GGSSGGGG");
        RoomLearner learner = new(new RoomQuery(Location, 101_325));
        for (int i = 0; i < RoomLearner.Days; i++)
        {
            learner.ReadOneDay(Today, CancellationToken.None);
        }

        Assert.Null(learner.Model);
    }

    [Fact]
    public void NoJournal_TeachesNothing()
    {
        RoomLearner learner = new(new RoomQuery(Location, 101_325));
        learner.ReadOneDay(Today, CancellationToken.None);
        Assert.Null(learner.Model);
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private void Write(int days, string quality = "GGGGGGGG")
    {
        using SqliteConnection connection = new($"Data Source={Location.Path};Pooling=False");
        connection.Open();
        JournalSchema.Migrate(connection);
        using SqliteTransaction transaction = connection.BeginTransaction();
        using SqliteCommand row = connection.CreateCommand();
        row.CommandText = """
            INSERT INTO reading (time_ms, clock_proven, verdict, quality, booth_temperature_c, booth_humidity_pct, intake_temperature_c, intake_humidity_pct,
                station_pressure_pa, exhaust_proof) VALUES ($at, 1, 2, $quality, 22, $booth, 18, $intake, 101325, $fan)
            """;
        SqliteParameter at = row.Parameters.Add("$at", SqliteType.Integer);
        SqliteParameter booth = row.Parameters.Add("$booth", SqliteType.Real);
        SqliteParameter intake = row.Parameters.Add("$intake", SqliteType.Real);
        SqliteParameter fan = row.Parameters.Add("$fan", SqliteType.Real);
        row.Parameters.AddWithValue("$quality", quality);
        Random random = new(1);
        for (int back = 1; back <= days; back++)
        {
            double outdoorsPct = 60 + (4 * back);
            double outdoors = RoomQuery.Ratio(18, outdoorsPct, 101_325)!.Value;
            double dry = RoomQuery.Ratio(22, 30, 101_325)!.Value;
            double saturated = RoomQuery.Ratio(22, 100, 101_325)!.Value;
            double ratio = dry;
            DateTimeOffset start = new(Today.AddDays(-back).ToDateTime(new TimeOnly(7, 30)), TimeSpan.Zero);
            for (int second = 0; second < 90 * 60; second++)
            {
                bool on = second >= 30 * 60;
                ratio += on ? ChangesPerH / 3600 * (outdoors - ratio) : 0;
                if (second % 10 == 0)
                {
                    (at.Value, fan.Value) = (start.AddSeconds(second).ToUnixTimeMilliseconds(), on ? 1.0 : 0.0);
                    booth.Value = Humidity(ratio) + random.NextDouble() - 0.5;
                    intake.Value = outdoorsPct + random.NextDouble() - 0.5;
                    row.ExecuteNonQuery();
                }
            }

            double Humidity(double w) => 100 * w / saturated * ((0.621945 + saturated) / (0.621945 + w));
        }

        transaction.Commit();
    }
}
