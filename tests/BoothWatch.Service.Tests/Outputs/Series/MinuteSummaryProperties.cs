using BoothWatch.Readings;
using BoothWatch.Verdicts;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Tests.Outputs.Series;

public sealed class MinuteSummaryProperties
{
    /// <summary>Whatever is written, in whatever order of time and with whatever gaps, each minute equals its recomputation from the rows.</summary>
    [Property(MaxTest = 25)]
    public Property Minute_OfAnyRows_EqualsRecomputation()
    {
        Gen<double?> value = Gen.Choose(-40_000, 60_000).Select(v => (double?)(v / 1000.0));
        Gen<double?> perhaps = Gen.Frequency((4, value), (1, Gen.Constant<double?>(null)));
        Gen<Assessment> row =
            from second in Gen.Choose(-200, 200)
            from temperature in value
            from piece in perhaps
            from margin in perhaps
            from verdict in Gen.Elements(Enum.GetValues<Verdict>())
            from quality in Gen.Elements(Enum.GetValues<ReadingQuality>())
            select TestAssessment.At(
                TestAssessment.Start.AddSeconds(second), temperature!.Value, pieceC: piece, marginC: margin,
                verdict: verdict, temperatureQuality: quality);
        return Prop.ForAll(row.NonEmptyListOf().Select(rows => rows.ToArray()).ToArbitrary(), rows =>
        {
            using var folder = new JournalFolder();
            folder.Output().Write(rows);
            using SqliteConnection connection = folder.Look();
            Assert.InRange(MinuteCheck.EqualsRecomputation(connection), 1, rows.Length);
        });
    }
}
