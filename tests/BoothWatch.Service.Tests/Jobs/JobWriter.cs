using System.Globalization;
using BoothWatch.Jobs;
using BoothWatch.Service.Jobs;
using BoothWatch.Service.Outputs.Series;
using Microsoft.Extensions.Logging.Abstractions;

namespace BoothWatch.Service.Tests.Jobs;

/// <summary>The process that the kill test kills: marks, stops and corrects coats without pause and prints each entry after its method has returned.</summary>
internal static class JobWriter
{
    public const string Command = "write-jobs";

    public static async Task<int> Run(string path)
    {
        JournalLocation location = new(path, IsDemo: false);
        using var journal = new Journal(location, TimeSpan.FromSeconds(10), TimeProvider.System, NullLogger<Journal>.Instance);
        JobStore store = new(journal, location);
        await using var acknowledged = new StreamWriter(Console.OpenStandardOutput()) { AutoFlush = true };
        for (int i = 0; ; i++)
        {
            Job job = store.Start(TestJob.Details, TestJob.Day, EntrySource.Page);
            for (int coat = 0; coat < 4; coat++)
            {
                job = store.MarkCoat(job.Id, TestJob.Coat(coat * 30), TestJob.Moment(coat), TestJob.Day, EntrySource.Button);
                job = store.Append(job.Id, new CoatStopped(job.LastCoat!.Id, TestJob.Day.AddMinutes((coat * 30) + 5)), TestJob.Day, EntrySource.Button);
                job = store.Append(job.Id, new OutcomeMarked(job.LastCoat!.Id, CoatOutcome.Clear, ""), TestJob.Day, EntrySource.Page);
                await acknowledged.WriteLineAsync(job.Entries[^1].Id.ToString(CultureInfo.InvariantCulture));
            }
        }
    }
}
