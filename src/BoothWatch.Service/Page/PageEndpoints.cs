using System.Globalization;
using System.Text.Json;
using System.Threading.Channels;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Page;

/// <summary>What each address of the page answers. None of it touches a sensor.</summary>
internal sealed class PageEndpoints(
    PageFeed feed,
    LiveEvents events,
    PageHtml html,
    ChartStore charts,
    IHistory history,
    PageSources sources,
    DegreeText text,
    IOptions<PageOptions> options,
    IHostApplicationLifetime lifetime,
    TimeProvider time)
{
    public const int MostPoints = 12_000;
    public const int LongestDays = 1830;
    private const double LeastCupMl = 10;
    private const double MostCupMl = 20_000;

    public ContentHttpResult Page() => TypedResults.Content(html.Render(View(feed.Current, null), sources, text, time, feed.FirstTime), "text/html; charset=utf-8");

    public JsonHttpResult<NowAnswer> Now() => TypedResults.Json(NowAnswer.Of(feed.Current, sources), PageJson.Options);

    public JsonHttpResult<HealthAnswer> Health()
    {
        IReadOnlyList<OutputStatus> outputs = sources.Health();
        double ageS = Math.Round(feed.Current.Age.TotalSeconds, 2);
        return TypedResults.Json(
            new HealthAnswer(time.GetUtcNow().UtcDateTime, outputs.All(output => output.Working), ageS, outputs), PageJson.Options);
    }

    public IResult Events(HttpContext context) =>
        Stream(context, "assessment", s => JsonSerializer.Serialize(NowAnswer.Of(s, sources), PageJson.Options));

    public IResult ViewEvents(HttpContext context)
    {
        QueryText query = new(context.Request.Query);
        double? cupMl = context.Request.Query.ContainsKey("cup") ? query.Number("cup", LeastCupMl, MostCupMl, 250, "mL") : null;
        return query.Problem ?? Stream(context, "view", s => JsonSerializer.Serialize(View(s, cupMl), PageJson.Options));
    }

    public IResult History(HttpRequest request)
    {
        QueryText query = new(request.Query);
        DateTimeOffset now = time.GetUtcNow();
        DateTimeOffset to = query.Time("to", now, now);
        DateTimeOffset from = query.Time("from", to - TimeSpan.FromHours(options.Value.ChartHours), now.AddHours(-1));
        int points = query.Whole("points", 2, MostPoints, 500, "a number");
        bool asColumns = query.Word("shape", "points", "columns") == "columns";
        if (query.Problem is null && (from >= to || to - from > TimeSpan.FromDays(LongestDays)))
        {
            query.Add("from", from.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture),
                $"give a time before 'to' and at most {LongestDays} days before it, for example from={to.UtcDateTime.AddHours(-1):yyyy-MM-dd'T'HH:mm:ss'Z'}");
        }

        if (query.Problem is { } problem)
        {
            return problem;
        }

        try
        {
            IReadOnlyList<HistoryPoint> past = history.Read(from, to, points);
            return asColumns
                ? TypedResults.Json(HistoryColumns.Of(from, to, past), PageJson.Options)
                : TypedResults.Json(new HistoryAnswer(from.UtcDateTime, to.UtcDateTime, past), PageJson.Options);
        }
        catch (HistoryUnavailableException trouble)
        {
            return TypedResults.Problem(title: "The past cannot be read now", detail: trouble.Message, statusCode: StatusCodes.Status503ServiceUnavailable);
        }
    }

    public async Task<IResult> Chart(HttpRequest request, CancellationToken cancellationToken)
    {
        QueryText query = new(request.Query);
        double hours = query.Number("hours", PageOptionsValidator.ShortestChartHours, PageOptionsValidator.LongestChartHours, options.Value.ChartHours, "hours");
        (int width, int height, string theme) = query.Picture();
        if (query.Problem is { } problem)
        {
            return problem;
        }

        DateTimeOffset to = time.GetUtcNow();
        bool sinceStart = !request.Query.ContainsKey("hours") && sources.AnyEmulated;
        DateTimeOffset from = sinceStart ? SinceStart(to, hours) : to.AddHours(-hours);
        string key = string.Create(CultureInfo.InvariantCulture, $"{(sinceStart ? 0 : hours)}/{width}/{height}/{theme}");
        ChartPicture picture = await charts.Get(key, new ChartRequest(from, to, width, height, theme, sources.Demo()?.Speed ?? 1), cancellationToken);
        return TypedResults.Content(
            picture.Svg, "image/svg+xml", statusCode: picture.IsOfThePast ? StatusCodes.Status200OK : StatusCodes.Status503ServiceUnavailable);
    }

    /// <summary>A compressed demo day lasts minutes: the axis begins with it, and is never shorter than the shortest chart.</summary>
    private DateTimeOffset SinceStart(DateTimeOffset to, double mostHours)
    {
        DateTimeOffset start = feed.FirstTime ?? to;
        DateTimeOffset earliest = to.AddHours(-mostHours);
        DateTimeOffset latest = to.AddMinutes(-1);
        return start < earliest ? earliest : start > latest ? latest : start;
    }

    private PageView View(CurrentState state, double? cupMl) => PageView.Of(state, sources, text, time, cupMl);

    private IResult Stream(HttpContext context, string eventType, Func<CurrentState, string> render)
    {
        Channel<long>? stream = feed.TryOpen();
        if (stream is null)
        {
            context.Response.Headers.RetryAfter = "10";
            return TypedResults.Problem(
                title: "Too many streams",
                detail: $"{PageFeed.MaxStreams} browsers already follow the booth; close one, or ask /api/now instead",
                statusCode: StatusCodes.Status503ServiceUnavailable);
        }

        return TypedResults.ServerSentEvents(events.Read(stream, eventType, render, lifetime.ApplicationStopping));
    }
}
