using BoothWatch.Jobs;
using BoothWatch.Service.Assessing;
using BoothWatch.Service.Jobs;
using BoothWatch.Service.Limits;
using BoothWatch.Service.Tests.Jobs;
using BoothWatch.Service.Tests.Outputs.Series;
using BoothWatch.Verdicts;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Tests.Limits;

/// <summary>A shop with a real journal, into which coats are marked as the page would.</summary>
internal sealed class LimitShop : IDisposable
{
    private readonly JournalFolder _folder = new();
    private readonly LimitCoatQuery _query;

    public LimitShop(LimitOptions? options = null, bool demo = false)
    {
        IOptions<LimitOptions> chosen = Options.Create(options ?? new LimitOptions { Enabled = true });
        Store = new JobStore(_folder.Journal(), _folder.Location);
        _query = new LimitCoatQuery(_folder.Location with { IsDemo = demo }, chosen, _folder.Time);
        Keeper = new LimitKeeper(Store, _query, Policy, chosen, _folder.Time, NullLogger<LimitKeeper>.Instance);
    }

    public JobStore Store { get; }

    public PolicyInForce Policy { get; } = new(new VerdictPolicy());

    public LimitKeeper Keeper { get; }

    public DateTimeOffset Now => _folder.Time.GetUtcNow();

    public LimitEvidence Evidence => _query.Read();

    /// <summary>Marks a coat, ends it and says how it came out; null: nobody said.</summary>
    /// <returns>The job and the coat.</returns>
    public (Job Job, long CoatId) Coat(double daysAgo, double? marginC, CoatOutcome? outcome)
    {
        DateTimeOffset start = Now.AddDays(-daysAgo);
        CoatDetails details = TestJob.Coat(0) with { Start = start };
        Job job = Store.Start(TestJob.Details, start, EntrySource.Page);
        CoatMoment? moment = marginC is { } margin ? TestJob.Moment(margin) with { Time = start } : null;
        job = Store.MarkCoat(job.Id, details, moment, start, EntrySource.Page);
        long coat = job.LastCoat!.Id;
        job = Store.Append(job.Id, new CoatStopped(coat, start.AddMinutes(6)), start.AddMinutes(6), EntrySource.Page);
        return outcome is { } said ? (Store.Append(job.Id, new OutcomeMarked(coat, said, ""), Now, EntrySource.Page), coat) : (job, coat);
    }

    public void Coats(int count, double marginC, CoatOutcome outcome, double firstDaysAgo = 1)
    {
        for (int i = 0; i < count; i++)
        {
            Coat(firstDaysAgo + i, marginC, outcome);
        }
    }

    /// <summary>Begins a coat that is not ended.</summary>
    public Job Begin(double minutesAgo)
    {
        DateTimeOffset start = Now.AddMinutes(-minutesAgo);
        Job job = Store.Start(TestJob.Details, start, EntrySource.Page);
        return Store.MarkCoat(job.Id, TestJob.Coat(0) with { Start = start }, null, start, EntrySource.Page);
    }

    /// <summary>Makes the journal unreadable until disposed of: another file lies in its place.</summary>
    public IDisposable Unreadable()
    {
        string aside = Directory.CreateDirectory(Path.Combine(_folder.Folder, "aside")).FullName;
        string[] files = Directory.GetFiles(_folder.Folder);
        foreach (string file in files)
        {
            File.Move(file, Path.Combine(aside, Path.GetFileName(file)));
        }

        File.WriteAllText(_folder.Location.Path, "this is no journal");
        return new Restored(() =>
        {
            foreach (string file in Directory.GetFiles(_folder.Folder))
            {
                File.Delete(file);
            }

            foreach (string file in files)
            {
                File.Move(Path.Combine(aside, Path.GetFileName(file)), file);
            }
        });
    }

    private sealed class Restored(Action restore) : IDisposable
    {
        public void Dispose() => restore();
    }

    /// <summary>Makes the journal unreadable.</summary>
    public void Break()
    {
        foreach (string file in Directory.EnumerateFiles(_folder.Folder))
        {
            File.WriteAllText(file, "this is no journal any more, and long enough to be looked at as one: " + new string('x', 4096));
        }
    }

    public void Dispose()
    {
        Keeper.Dispose();
        _folder.Dispose();
    }
}
