using BoothWatch.Service.Access;
using BoothWatch.Service.Page;

namespace BoothWatch.Service.Jobs;

/// <summary>Maps the addresses of jobs and coats.</summary>
public static class JobAddresses
{
    /// <summary>Maps the page of jobs, the JSON and the calendar. Call it after <see cref="PageSetup.MapPage"/>.</summary>
    public static WebApplication MapJobs(this WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        JobEndpoints jobs = app.Services.GetRequiredService<JobEndpoints>();
        app.MapFiles("jobs", ("/jobs", "jobs.html"), ("/jobs.js", "jobs.js"), ("/jobs.css", "jobs.css"));

        app.MapGet("/api/jobs", jobs.Jobs).Named("jobs", "Jobs, newest first", "Query: from, to (RFC 3339, start of the job), piece (part of its name), running (true or false), skip, take (1 to 200).").Produces<RowPage<JobRow>>();
        app.MapGet("/api/coats", jobs.Coats).Named("coats", "Coats, newest first", "Query: from, to (RFC 3339), piece, job, kind, outcome (a word, or known), marginFrom, marginTo (°C), skip, take (1 to 200).").Produces<RowPage<CoatRow>>();
        app.MapGet("/api/schedules", jobs.Schedules).Named("schedules", "Schedules", "Rounds of coats with their waits, from config/schedules.");
        app.MapGet("/api/jobs/{id:long}", jobs.Job).Named("job", "One job", "Its coats with their air, timers, watch, and what the next coat most likely is.").Produces<JobAnswer>();
        app.MapGet("/api/jobs/{id:long}/entries", jobs.Entries).Named("job-entries", "Everything entered on a job", "Oldest first; nothing is ever edited or removed.");
        app.MapGet("/api/jobs/{id:long}/timers.ics", jobs.Calendar).Named("job-timers", "Timers as a calendar", "RFC 5545.").Produces<string>(contentType: "text/calendar");
        app.MapGet("/api/coats/{id:long}", jobs.Coat).Named("coat", "One coat", "What it was, its air and margin, corrections and outcome.").Produces<CoatAnswer>();

        RouteGroupBuilder changes = app.MapGroup("").RequireChange();
        changes.MapPost("/api/jobs", jobs.Start).Change("job-start", "Start a job", "piece (required), finish, schedule, note.", StatusCodes.Status201Created);
        changes.MapPost("/api/jobs/{id:long}/correct", jobs.CorrectJob).Change("job-correct", "Correct a job", "piece, finish, schedule, note; why.");
        changes.MapPost("/api/jobs/{id:long}/finish", jobs.Finish).Change("job-finish", "Finish a job", "{}");
        changes.MapPost("/api/jobs/{id:long}/undo", jobs.Undo).Change("job-undo", "Undo", "entry: the entry to take back; without it the latest that holds.");
        changes.MapPost("/api/jobs/{id:long}/coats", jobs.Mark).Change("coat-mark", "Mark a coat", "{} marks the next coat as it most likely is, beginning now; kind, lacquer, lacquerParts, thinner, thinnerParts, retarder, retarderPct, wetFilmUm, substrate, airSpeedMPerS, start, stop say otherwise.", StatusCodes.Status201Created);
        changes.MapPost("/api/coats/{id:long}/stop", jobs.Stop).Change("coat-stop", "End a coat", "stop: when; without it now.");
        changes.MapPost("/api/coats/{id:long}/correct", jobs.CorrectCoat).Change("coat-correct", "Correct a coat", "Fields as in marking; what is not given stays. why: the reason. The original is kept.");
        changes.MapPost("/api/coats/{id:long}/outcome", jobs.MarkOutcome).Change("coat-outcome", "Say how a coat came out", "outcome: clear, blushed, runs, dry-spray, orange-peel or soft; note.");
        return app;
    }

    private static RouteHandlerBuilder Named(this RouteHandlerBuilder route, string name, string summary, string description) =>
        route.WithName(name).WithSummary(summary).WithDescription(description)
            .ProducesProblem(StatusCodes.Status400BadRequest).ProducesProblem(StatusCodes.Status404NotFound).ProducesProblem(StatusCodes.Status503ServiceUnavailable);

    private static void Change(this RouteHandlerBuilder route, string name, string summary, string fields, int success = StatusCodes.Status200OK) =>
        route.Named(name, summary, "JSON body; needs a signed-in session. " + fields)
            .Produces<JobAnswer>(success)
            .ProducesProblem(StatusCodes.Status409Conflict);
}
