using BoothWatch.Checks;
using BoothWatch.Readings;
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
    public void Hold_AsItWasWritten_ReadsAsItWas()
    {
        HoldFile file = new(_folder.Location);
        File.WriteAllText(file.FilePath, """[{"sensor":"boothAir","quality":"being-checked","since":"2026-11-25T08:00:00Z","spareMayStandIn":true,"salt":null,"part":"SHT4x at 0x44 on bus 1"}]""");
        Assert.Equal(
            new HoldLine("boothAir", ReadingQuality.BeingChecked, new DateTimeOffset(2026, 11, 25, 8, 0, 0, TimeSpan.Zero), true) { Part = "SHT4x at 0x44 on bus 1" },
            Assert.Single(file.Read()!));
    }

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
