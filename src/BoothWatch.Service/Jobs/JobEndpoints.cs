using BoothWatch.Film;
using BoothWatch.Jobs;
using BoothWatch.Service.Coat;
using BoothWatch.Service.Materials;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Page;
using Microsoft.Extensions.Options;
using static BoothWatch.Service.Jobs.JsonAnswers;

namespace BoothWatch.Service.Jobs;

/// <summary>What each address under /api/jobs and /api/coats answers.</summary>
internal sealed class JobEndpoints(
    JobStore store,
    JobDesk desk,
    JobClock clock,
    JobAnswers answers,
    CoatPrefill prefill,
    ScheduleBook schedules,
    MaterialCatalogue catalogue,
    IOptions<JobsOptions> options,
    IOptions<BoothOptions> booth,
    TimeProvider time)
{
    private const int LongestText = 400;

    public IResult Jobs(HttpRequest request) => Guard(() =>
    {
        QueryText query = new(request.Query);
        DateTimeOffset now = time.GetUtcNow();
        JobQuery asked = new()
        {
            From = Time(query, request, "from", now),
            To = Time(query, request, "to", now),
            Piece = request.Query["piece"],
            Running = request.Query.ContainsKey("running") ? query.Word("running", "true", "false") == "true" : null,
            Skip = query.Whole("skip", 0, 1_000_000, 0, "a number of rows"),
            Take = query.Whole("take", 1, JobQuery.MostRows, 50, "a number of rows"),
        };
        return query.Problem ?? Json(store.Jobs(asked));
    });

    public IResult Coats(HttpRequest request) => Guard(() =>
    {
        QueryText query = new(request.Query);
        DateTimeOffset now = time.GetUtcNow();
        CoatQuery asked = new()
        {
            From = Time(query, request, "from", now),
            To = Time(query, request, "to", now),
            Piece = request.Query["piece"],
            JobId = request.Query.ContainsKey("job") ? query.Whole("job", 1, int.MaxValue, 1, "the number of a job") : null,
            Kind = request.Query.ContainsKey("kind") ? CoatWords.Kinds[query.Word("kind", [.. CoatWords.Kinds.Keys])] : null,
            Outcome = Outcome(query, request),
            OutcomeKnown = request.Query["outcome"] == "known",
            MarginFromC = request.Query.ContainsKey("marginFrom") ? query.Number("marginFrom", -50, 50, 0, "°C") : null,
            MarginToC = request.Query.ContainsKey("marginTo") ? query.Number("marginTo", -50, 50, 1, "°C") : null,
            Skip = query.Whole("skip", 0, 1_000_000, 0, "a number of rows"),
            Take = query.Whole("take", 1, JobQuery.MostRows, 50, "a number of rows"),
        };
        return query.Problem ?? Json(store.Coats(asked));
    });

    public IResult Schedules() => Json(schedules.Schedules.Values.OrderBy(schedule => schedule.Id, StringComparer.Ordinal).Select(schedule => new
    {
        schedule.Id,
        schedule.Description,
        schedule.Basis,
        Round = schedule.Round.Select(step => new { step.Coat, WaitS = step.Wait.TotalSeconds }),
        schedule.Rounds,
        schedule.SandNoCoarserThanGrit,
        SoftForS = schedule.SoftFor.TotalSeconds,
        HangBeforeBuffingS = schedule.HangBeforeBuffing?.TotalSeconds,
        IsDefault = schedule.Id == options.Value.DefaultSchedule,
    }));

    public IResult Job(long id) => OnJob(id, job => Json(answers.Of(job)));

    public IResult Entries(long id) => OnJob(id, job => Json(job.Entries.Select(entry => new
    {
        entry.Id,
        entry.At,
        entry.By,
        Kind = JobEntryJson.KindOf(entry.Change),
        Change = (object)entry.Change,
        TakenBack = job.TakenBackEntries.Contains(entry.Id),
    })));

    public IResult Calendar(long id) => OnJob(id, job =>
    {
        BoothOptions place = booth.Value;
        string text = TimerCalendar.Write(job, clock.Of(job).Timers, $"{place.Shop}, {place.Name}", time.GetUtcNow());
        return TypedResults.Content(text, TimerCalendar.MediaType);
    });

    public IResult Coat(long id) => OnCoat(id, (job, coat) => Json(answers.Of(job, coat)));

    public Task<IResult> Start(HttpRequest request, CancellationToken cancel) => WithBody(request, fields =>
    {
        JobDetails details = Details(fields, new JobDetails("", "", options.Value.DefaultSchedule), required: true);
        return fields.Problem ?? Created(desk.Start(details, EntrySource.Page));
    }, cancel);

    public Task<IResult> CorrectJob(long id, HttpRequest request, CancellationToken cancel) => WithBody(request, fields => OnJob(id, job =>
    {
        JobDetails details = Details(fields, job.Details, required: false);
        string why = fields.Text("why", LongestText, "wrong piece") ?? "";
        return fields.Problem ?? Json(answers.Of(desk.Append(job, new JobCorrected(details, why), EntrySource.Page)));
    }), cancel);

    public Task<IResult> Finish(long id, HttpRequest request, CancellationToken cancel) => WithBody(request, fields => OnJob(id, job =>
        fields.Problem ?? Json(answers.Of(desk.Append(job, new JobFinished(), EntrySource.Page)))), cancel);

    public Task<IResult> Undo(long id, HttpRequest request, CancellationToken cancel) => WithBody(request, fields => OnJob(id, job =>
    {
        long? entry = fields.Id("entry");
        return fields.Problem ?? Json(answers.Of(desk.Undo(job, entry, EntrySource.Page)));
    }), cancel);

    public Task<IResult> Mark(long id, HttpRequest request, CancellationToken cancel) => WithBody(request, fields => OnJob(id, job =>
    {
        DateTimeOffset now = time.GetUtcNow();
        CoatKind? kind = fields.Word("kind", CoatWords.Kinds);
        DateTimeOffset start = fields.Time("start", now) ?? now;
        CoatDetails details = CoatFields.Read(fields, prefill.Next(job, kind, start), catalogue, now);
        return fields.Problem ?? Created(desk.Mark(job, details, EntrySource.Page));
    }), cancel);

    public Task<IResult> Stop(long id, HttpRequest request, CancellationToken cancel) => WithBody(request, fields => OnCoat(id, (job, coat) =>
    {
        DateTimeOffset? stop = fields.Time("stop", time.GetUtcNow());
        return fields.Problem ?? Json(answers.Of(desk.Stop(job, coat.Id, stop, EntrySource.Page)));
    }), cancel);

    public Task<IResult> CorrectCoat(long id, HttpRequest request, CancellationToken cancel) => WithBody(request, fields => OnCoat(id, (job, coat) =>
    {
        CoatDetails details = CoatFields.Read(fields, coat.Details, catalogue, time.GetUtcNow());
        string why = fields.Text("why", LongestText, "wrong retarder level") ?? "";
        return fields.Problem ?? Json(answers.Of(desk.Correct(job, coat.Id, details, why, EntrySource.Page)));
    }), cancel);

    public Task<IResult> MarkOutcome(long id, HttpRequest request, CancellationToken cancel) => WithBody(request, fields => OnCoat(id, (job, coat) =>
    {
        CoatOutcome? outcome = fields.Word("outcome", CoatWords.Outcomes, required: true);
        string note = fields.Text("note", LongestText, "white haze along the lower edge") ?? "";
        return fields.Problem ?? Json(answers.Of(desk.Append(job, new OutcomeMarked(coat.Id, outcome!.Value, note), EntrySource.Page)));
    }), cancel);

    private static DateTimeOffset? Time(QueryText query, HttpRequest request, string name, DateTimeOffset now) =>
        request.Query.ContainsKey(name) ? query.Time(name, now, now) : null;

    private static CoatOutcome? Outcome(QueryText query, HttpRequest request) =>
        request.Query.ContainsKey("outcome") && query.Word("outcome", ["known", .. CoatWords.Outcomes.Keys]) is var word && word != "known"
            ? CoatWords.Outcomes[word]
            : null;

#pragma warning disable CA1859 // the callers put these beside other answers, so they have the common type
    private static IResult Missing(string what, string list) =>
        TypedResults.Problem(title: $"No such {what.Split(' ')[0]}", detail: $"{what} does not exist; {list} lists them", statusCode: StatusCodes.Status404NotFound);

    private IResult Created(Job job) => TypedResults.Json(answers.Of(job), JobsJson.Options, statusCode: StatusCodes.Status201Created);
#pragma warning restore CA1859

    private static IResult Guard(Func<IResult> work)
    {
        try
        {
            return work();
        }
        catch (JobRuleException rule)
        {
            return TypedResults.Problem(
                title: "It does not fit the job",
                detail: rule.Message,
                statusCode: StatusCodes.Status409Conflict,
                extensions: new Dictionary<string, object?> { ["fields"] = new[] { rule.Field } });
        }
        catch (JournalException trouble)
        {
            return TypedResults.Problem(title: "The journal is not to be had", detail: trouble.Message, statusCode: StatusCodes.Status503ServiceUnavailable);
        }
    }

    private static async Task<IResult> WithBody(HttpRequest request, Func<JobFields, IResult> work, CancellationToken cancel)
    {
        JobFields fields = await JobFields.Read(request, cancel);
        return Guard(() => work(fields));
    }

    private JobDetails Details(JobFields fields, JobDetails from, bool required) => new(
        fields.Text("piece", 120, "table top", required) is { Length: > 0 } piece ? piece : from.Piece,
        fields.Text("finish", 120, "clear lacquer, satin") ?? from.Finish,
        fields.IsNull("schedule") ? null : fields.Known("schedule", schedules.Schedules.Keys, from.Schedule),
        fields.Text("note", LongestText, "left edge was repaired") ?? from.Note);

    private IResult OnJob(long id, Func<Job, IResult> work) => Guard(() =>
        store.Find(id) is { } job ? work(job) : Missing($"job {id}", "/api/jobs"));

    private IResult OnCoat(long id, Func<Job, JobCoat, IResult> work) => Guard(() =>
        store.FindByCoat(id) is { } job && job.Coats.FirstOrDefault(coat => coat.Id == id) is { } coat
            ? work(job, coat)
            : Missing($"coat {id}", "/api/coats"));
}
