using System.Text.Json;
using BoothWatch.Verdicts;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Outputs.Series;

/// <summary>Writes and reads verdict changes with the reasons that led to them.</summary>
internal static class VerdictChangeStatements
{
    /// <summary>How many reasons are kept of a change, most limiting first.</summary>
    public const int ReasonsKept = 3;

    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web);

    public static void Insert(SqliteConnection connection, Verdict? from, Assessment assessment)
    {
        ChangeReason[] reasons = [.. assessment.Reasons.Take(ReasonsKept)
            .Select(r => new ChangeReason(r.Rule, r.Limit.Word(), r.Finding, r.Action))];
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = "INSERT INTO verdict_change (time_ms, from_verdict, to_verdict, reasons) VALUES ($time_ms, $from, $to, $reasons)";
        command.Parameters.AddWithValue("$time_ms", assessment.Time.ToUnixTimeMilliseconds());
        command.Parameters.AddWithValue("$from", from is { } verdict ? (int)verdict : DBNull.Value);
        command.Parameters.AddWithValue("$to", (int)assessment.Verdict);
        command.Parameters.AddWithValue("$reasons", JsonSerializer.Serialize(reasons, Json));
        command.ExecuteNonQuery();
    }

    public static IReadOnlyList<ChangeReason> ReasonsFrom(string json) =>
        JsonSerializer.Deserialize<ChangeReason[]>(json, Json) ?? [];
}
