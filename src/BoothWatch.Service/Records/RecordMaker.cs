using BoothWatch.Jobs;
using BoothWatch.Records;
using BoothWatch.Service.Coat;
using BoothWatch.Service.Jobs;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Sensors;
using BoothWatch.Verdicts;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Records;

/// <summary>The last check of a sensor against a reference, by its configured name; null when none is on record.</summary>
/// <param name="sensor">The configured name, for example <c>boothAir</c>.</param>
/// <param name="coat">When the first coat was begun, UTC: a check after it is said to be after it.</param>
public delegate SensorCheck? LastCheckOf(string sensor, DateTimeOffset coat);

/// <summary>Gathers what a record is made from, out of the journal and the settings.</summary>
/// <param name="location">Where the journal lies.</param>
/// <param name="air">The air of its minutes.</param>
/// <param name="series">Its verdict changes.</param>
/// <param name="sensors">The configured sensors.</param>
/// <param name="lastCheck">Their last checks.</param>
/// <param name="booth">Names of shop and booth.</param>
/// <param name="time">The clock.</param>
public sealed class RecordMaker(
    JournalLocation location,
    RecordAirQuery air,
    SeriesQuery series,
    IEnumerable<ISensor> sensors,
    LastCheckOf lastCheck,
    IOptions<BoothOptions> booth,
    TimeProvider time)
{
    /// <summary>The verdict of a moment is that of the last change before it, looked for so far back.</summary>
    private static readonly TimeSpan LookBack = TimeSpan.FromDays(31);

    private readonly string _software = $"BoothWatch {typeof(RecordMaker).Assembly.GetName().Version?.ToString(3)}";

    /// <summary>The record of a job, ready to be written out; null when there is no such job.</summary>
    /// <exception cref="JournalException">The journal cannot be read; the message names the file and the fix.</exception>
    public RecordDocument? Of(long jobId) =>
        JournalFile.Read(location, null, connection => JobStatements.Find(connection, jobId), JobStore.LeastVersion) is { } job ? Of(job) : null;

    private RecordDocument Of(Job job)
    {
        DateTimeOffset now = time.GetUtcNow();
        DateTimeOffset coat = job.Coats.Select(known => known.Details.Start).DefaultIfEmpty(job.Entries[0].At).Min();
        bool invented = job.Entries[0].By == EntrySource.Demo;
        EnvironmentRecord record = RecordComposer.Compose(new RecordInputs
        {
            Job = job,
            Shop = booth.Value.Shop,
            Booth = booth.Value.Name,
            IsDemo = invented || location.IsDemo,
            AirOf = air.Of,
            ReasonsAt = moment => invented ? [] : ReasonsAt(moment),
            Air = [.. RecordSpan.Of(job, now).Select(air.Of)],
            Sensors = [.. sensors.Select(sensor => new RecordSensor(sensor.Name, sensor.Description, sensor.Quantities, sensor.IsEmulated, lastCheck(sensor.Name, coat)))],
        });
        return RecordDocument.Of(record, new RecordIssue(now, _software));
    }

    private IReadOnlyList<string> ReasonsAt(CoatMoment moment) =>
        series.VerdictChanges(moment.Time - LookBack, moment.Time.AddMilliseconds(1), most: 1) is [var change] && change.To == moment.Verdict
            ? [.. change.Reasons.Where(reason => reason.Limit != Verdict.Spray.Word()).Select(reason => reason.Finding)]
            : [];
}
