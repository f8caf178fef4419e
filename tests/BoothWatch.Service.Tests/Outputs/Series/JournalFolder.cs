using BoothWatch.Service.Outputs.Series;
using BoothWatch.Verdicts;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;

namespace BoothWatch.Service.Tests.Outputs.Series;

/// <summary>A journal in a temporary folder, with a look at the file that is independent of the code under test.</summary>
internal sealed class JournalFolder : IDisposable
{
    private readonly List<Journal> _open = [];

    public string Folder { get; } = Directory.CreateTempSubdirectory("boothwatch-journal-").FullName;

    public FakeTimeProvider Time { get; } = new(TestAssessment.Start);

    public JournalLocation Location => new(Path.Combine(Folder, JournalLocation.FileName), IsDemo: false);

    public SeriesQuery Query => new(Location);

    public Journal Journal(ILogger<Journal>? logger = null, double syncEveryS = 10)
    {
        var journal = new Journal(Location, TimeSpan.FromSeconds(syncEveryS), Time, logger ?? NullLogger<Journal>.Instance);
        _open.Add(journal);
        return journal;
    }

    public SeriesOutput Output(SeriesOptions? options = null) => new(Journal(), options ?? new SeriesOptions(), Time);

    public SqliteConnection Look()
    {
        var connection = new SqliteConnection($"Data Source={Location.Path};Pooling=False");
        connection.Open();
        return connection;
    }

    public T Ask<T>(string sql)
    {
        using SqliteConnection connection = Look();
        return Ask<T>(connection, sql);
    }

    public static T Ask<T>(SqliteConnection connection, string sql)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = sql;
        return (T)command.ExecuteScalar()!;
    }

    public void Dispose()
    {
        foreach (Journal journal in _open)
        {
            journal.Dispose();
        }

        Directory.Delete(Folder, recursive: true);
    }
}

internal static class SeriesOutputWriting
{
    public static void Write(this SeriesOutput output, params IEnumerable<Assessment> assessments)
    {
        foreach (Assessment assessment in assessments)
        {
            output.HandleAsync(assessment, CancellationToken.None).GetAwaiter().GetResult();
        }
    }
}
