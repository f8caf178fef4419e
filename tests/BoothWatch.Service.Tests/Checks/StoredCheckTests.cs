using BoothWatch.Checks;
using BoothWatch.Service.Checks;
using BoothWatch.Service.Tests.Outputs.Series;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Tests.Checks;

/// <summary>What a journal holds of a check stays readable: the words here are the format, whatever the code calls them.</summary>
public sealed class StoredCheckTests : IDisposable
{
    private readonly JournalFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Result_AsItWasWritten_ReadsAsItWas()
    {
        _folder.Journal().Write(durable: true, _ => { });
        using (SqliteConnection connection = _folder.Look())
        using (SqliteCommand command = connection.CreateCommand())
        {
            command.CommandText = """
                INSERT INTO sensor_check_entry (check_id, sensor, at_ms, kind, fields) VALUES (1, 'boothAir', 1790000000000, 'result',
                '{"result":{"salt":"sodium-chloride","temperatureC":21.5,"referencePct":75.4,"readPct":77.1,"expandedUncertaintyPct":1.1,"tolerancePct":3.5}}')
                """;
            command.ExecuteNonQuery();
        }

        CheckEntry entry = Assert.Single(new CheckStore(null, _folder.Location).All());
        Assert.Equal((CheckStep.Result, new CheckResult("sodium-chloride", 21.5, 75.4, 77.1, 1.1, 3.5)), (entry.Step, entry.Fields.Result));
    }
}
