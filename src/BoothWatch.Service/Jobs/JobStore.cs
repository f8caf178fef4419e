using BoothWatch.Jobs;
using BoothWatch.Service.Outputs.Series;
using Microsoft.Data.Sqlite;

namespace BoothWatch.Service.Jobs;

/// <summary>
/// The jobs in the journal. Every change is a row that is only ever added; the lists that searches read are written
/// with it in the same transaction. A method that returns has its row on the disk. Safe for several threads.
/// </summary>
/// <param name="journal">The journal.</param>
/// <param name="location">Where it lies.</param>
public sealed class JobStore(Journal journal, JournalLocation location)
{
    /// <summary>Version of the journal that first has the tables.</summary>
    internal const int LeastVersion = 3;

    /// <summary>Raised after a job changed, on the thread that changed it; must be quick and not throw.</summary>
    public event Action<Job>? Changed;

    /// <summary>Starts a job.</summary>
    /// <param name="details">What it is about.</param>
    /// <param name="at">When, UTC.</param>
    /// <param name="by">Where it was entered, of <see cref="EntrySource"/>.</param>
    /// <exception cref="JournalException">It could not be written; the message names the file and the fix.</exception>
    public Job Start(JobDetails details, DateTimeOffset at, string by) =>
        Write(connection =>
        {
            long jobId = JobStatements.NextJobId(connection);
            return Job.From([JobStatements.Insert(connection, jobId, at, by, new JobStarted(details))]);
        });

    /// <summary>Marks a coat. One that is still open ends where this one begins.</summary>
    /// <param name="jobId">The job.</param>
    /// <param name="details">What the coat is.</param>
    /// <param name="moment">The air it was begun in; null when not known.</param>
    /// <param name="at">When it was entered, UTC.</param>
    /// <param name="by">Where it was entered.</param>
    /// <exception cref="JobRuleException">It does not fit the job; nothing was written.</exception>
    /// <exception cref="JournalException">It could not be written.</exception>
    public Job MarkCoat(long jobId, CoatDetails details, CoatMoment? moment, DateTimeOffset at, string by) =>
        Write(connection =>
        {
            Job job = Existing(connection, jobId);
            if (job.OpenCoat is { } open && open.Details.Start <= details.Start)
            {
                job = job.With(JobStatements.Insert(connection, jobId, at, by, new CoatStopped(open.Id, details.Start)));
            }

            return job.With(JobStatements.Insert(connection, jobId, at, by, new CoatMarked(JobStatements.NextCoatId(connection), details, moment)));
        });

    /// <summary>Adds any other change to a job.</summary>
    /// <param name="jobId">The job.</param>
    /// <param name="change">The change.</param>
    /// <param name="at">When it was entered, UTC.</param>
    /// <param name="by">Where it was entered.</param>
    /// <exception cref="JobRuleException">It does not fit the job; nothing was written.</exception>
    /// <exception cref="JournalException">It could not be written.</exception>
    public Job Append(long jobId, JobChange change, DateTimeOffset at, string by) =>
        Write(connection => Existing(connection, jobId).With(JobStatements.Insert(connection, jobId, at, by, change)));

    /// <summary>A job with everything that was entered; null when there is none of the number.</summary>
    /// <exception cref="JournalException">The journal cannot be read.</exception>
    public Job? Find(long jobId) => Read(null, connection => JobStatements.Find(connection, jobId));

    /// <summary>The job that a coat belongs to, also when the coat was taken back; null when there is none of the number.</summary>
    /// <exception cref="JournalException">The journal cannot be read.</exception>
    public Job? FindByCoat(long coatId) => Read(null, connection =>
        JobStatements.JobOfCoat(connection, coatId) is { } jobId ? JobStatements.Find(connection, jobId) : null);

    /// <summary>Running jobs, the one with the latest entry first; at most 20.</summary>
    /// <exception cref="JournalException">The journal cannot be read.</exception>
    public IReadOnlyList<Job> Running() => Read<IReadOnlyList<Job>>([], JobStatements.Running);

    /// <summary>Lists jobs, newest first.</summary>
    /// <exception cref="JournalException">The journal cannot be read.</exception>
    public RowPage<JobRow> Jobs(JobQuery query) => Read(new RowPage<JobRow>(0, []), connection => JobLists.Jobs(connection, query));

    /// <summary>Lists coats, newest first.</summary>
    /// <exception cref="JournalException">The journal cannot be read.</exception>
    public RowPage<CoatRow> Coats(CoatQuery query) => Read(new RowPage<CoatRow>(0, []), connection => JobLists.Coats(connection, query));

    /// <summary>Enters past jobs in one transaction, unless <paramref name="onlyIfEmpty"/> and there are jobs already.</summary>
    /// <returns>False when nothing was entered.</returns>
    internal bool Import(IEnumerable<JobImport> jobs, string by, bool onlyIfEmpty, Action<SqliteConnection>? alongside = null)
    {
        bool entered = false;
        journal.Write(durable: true, connection =>
        {
            if (onlyIfEmpty && JobStatements.NextJobId(connection) > 1)
            {
                return;
            }

            foreach (JobImport import in jobs)
            {
                JobLists.Rewrite(connection, Enter(connection, import, by));
            }

            alongside?.Invoke(connection);
            entered = true;
        });
        return entered;
    }

    /// <summary>True when no job was ever entered.</summary>
    /// <exception cref="JournalException">The journal cannot be read.</exception>
    internal bool IsEmpty => Read(true, connection => JobStatements.NextJobId(connection) == 1);

    private static Job Enter(SqliteConnection connection, JobImport import, string by)
    {
        long jobId = JobStatements.NextJobId(connection);
        List<JobEntry> entries = [];
        void Add(DateTimeOffset at, JobChange change) => entries.Add(JobStatements.Insert(connection, jobId, at, by, change));
        Add(import.Started, new JobStarted(import.Details));
        foreach (CoatImport coat in import.Coats)
        {
            long coatId = JobStatements.NextCoatId(connection);
            DateTimeOffset stop = coat.Details.Stop ?? coat.Details.Start;
            Add(coat.Details.Start, new CoatMarked(coatId, coat.Details with { Stop = null }, coat.Moment));
            Add(stop, new CoatStopped(coatId, stop));
            if (coat.Outcome is { } outcome)
            {
                Add(stop.AddHours(1), new OutcomeMarked(coatId, outcome, coat.Note));
            }
        }

        if (import.Finished is { } finished)
        {
            Add(finished, new JobFinished());
        }

        return Job.From(entries);
    }

    private static Job Existing(SqliteConnection connection, long jobId) =>
        JobStatements.Find(connection, jobId) ?? throw new JobRuleException("job", $"job {jobId} does not exist; /api/jobs lists them");

    private Job Write(Func<SqliteConnection, Job> work)
    {
        Job? job = null;
        journal.Write(durable: true, connection =>
        {
            job = work(connection);
            JobLists.Rewrite(connection, job);
        });
        Changed?.Invoke(job!);
        return job!;
    }

    private T Read<T>(T empty, Func<SqliteConnection, T> query) => JournalFile.Read(location, empty, query, LeastVersion);
}
