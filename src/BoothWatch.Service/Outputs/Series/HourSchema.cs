namespace BoothWatch.Service.Outputs.Series;

/// <summary>The tables of the hour summaries, and the triggers that keep them true to their minutes.</summary>
/// <remarks>
/// An hour is in <c>hour</c>, made of all its minutes, or within a span of <c>hour_due</c>, still to be made; never in both.
/// Triggers on <c>minute</c> see to it in the transaction that changes a minute, whoever changes it, so that a crash leaves
/// nothing half done and a reader needs to know nothing but the two tables. Spans do not overlap and begin and end on an hour,
/// so that the last one that begins at or before a minute is the only one that can hold it.
/// </remarks>
internal static class HourSchema
{
    /// <summary>The step that brings them. All minutes that there are become one span to be made, so that it takes no time.</summary>
    public static readonly string Step = $$"""
        CREATE TABLE hour (
            hour_ms INTEGER PRIMARY KEY,
            {{JournalSchema.SummaryColumns}}
        ) STRICT;

        CREATE TABLE hour_due (
            from_ms INTEGER PRIMARY KEY,
            to_ms INTEGER NOT NULL
        ) STRICT;
        INSERT INTO hour_due (from_ms, to_ms)
            SELECT {{HourOf("first")}}, {{HourOf("last")}} + 3600000
            FROM (SELECT (SELECT min(minute_ms) FROM minute) AS first, (SELECT max(minute_ms) FROM minute) AS last)
            WHERE first IS NOT NULL;

        {{Due("hour_of_a_new_minute_is_due", "INSERT", "new")}}
        {{Due("hour_of_a_changed_minute_is_due", "UPDATE", "new")}}
        {{Due("hour_of_a_removed_minute_is_due", "DELETE", "old")}}
        """;

    /// <summary>The version of the journal that first had hours.</summary>
    public static int FirstVersion => JournalSchema.Steps.ToList().IndexOf(Step) + 1;

    // Only the first change within an hour that is made finds no span that holds it; all others end at the condition.
    private static string Due(string trigger, string change, string row) => $"""
        CREATE TRIGGER {trigger} AFTER {change} ON minute
            WHEN ifnull((SELECT to_ms FROM hour_due WHERE from_ms <= {row}.minute_ms ORDER BY from_ms DESC LIMIT 1), {row}.minute_ms) <= {row}.minute_ms
            BEGIN
                DELETE FROM hour WHERE hour_ms = {HourOf($"{row}.minute_ms")};
                INSERT INTO hour_due (from_ms, to_ms) VALUES ({HourOf($"{row}.minute_ms")}, {HourOf($"{row}.minute_ms")} + 3600000);
            END;
        """;

    private static string HourOf(string time) => $"{time} - (({time} % 3600000) + 3600000) % 3600000";
}
