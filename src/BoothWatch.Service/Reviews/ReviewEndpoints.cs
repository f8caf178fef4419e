using System.Globalization;
using BoothWatch.Jobs;
using BoothWatch.Reviews;
using BoothWatch.Service.Jobs;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Page;

namespace BoothWatch.Service.Reviews;

/// <summary>What the addresses of reviews answer.</summary>
internal sealed class ReviewEndpoints(
    JobStore store, ReviewDesk desk, ReviewDrawing drawing, OneAtATime turns, JournalLocation location, DegreeText text, TimeProvider time)
{
    public Task<IResult> Review(long id, CancellationToken cancellationToken) => OnCoat(id, (job, coat) =>
    {
        CoatReview review = desk.Of(coat);
        string when = TimeZoneInfo.ConvertTime(coat.Details.Start, time.LocalTimeZone).ToString("d MMMM yyyy, HH:mm", CultureInfo.InvariantCulture);
        return TypedResults.Json(ReviewAnswer.Of(job, coat, review, location.IsDemo, when, Lines(review)), JobsJson.Options);
    }, cancellationToken);

    public async Task<IResult> Chart(long id, HttpRequest request, CancellationToken cancellationToken)
    {
        QueryText query = new(request.Query);
        string part = query.Word("part", "film", "hours");
        (int width, int height, string theme) = query.Picture();
        if (query.Problem is { } problem)
        {
            return problem;
        }

        ChartRequest asked = new(default, default, width, height, theme);
        return await OnCoat(
            id,
            (_, coat) => TypedResults.Content(part == "film" ? drawing.Film(asked, desk.Of(coat)) : drawing.Hours(asked, desk.Of(coat)), "image/svg+xml"),
            cancellationToken);
    }

    private List<ReviewLine> Lines(CoatReview review)
    {
        if (review.Figures is not { } figures)
        {
            return [];
        }

        static string Number(double value) => value.ToString("0.00", CultureInfo.InvariantCulture) + "\u00a0g/m²";
        static string Minutes(double? seconds) =>
            seconds is { } s ? (s / 60).ToString("0.0", CultureInfo.InvariantCulture) + "\u00a0min" : "not within 6\u00a0h";
        return
        [
            new("Blush margin", text.Difference(figures.MarginC), $"{text.Uncertainty(figures.MarginUncertaintyC)}; the shop wants {text.Difference(figures.WantedMarginC)}"),
            new("Water at set", Number(figures.WaterAtSetGPerM2), $"haze from about {Number(figures.ToleranceGPerM2)}"),
            new("Below the dew point", text.Difference(-figures.BelowDewPointByC).TrimStart('+'), $"coldest film {text.Temperature(figures.LowestFilmTemperatureC)}"),
            new("Time to set", Minutes(figures.TimeToSetS), $"a usual coat in mild air: {Minutes(figures.ReferenceTimeToSetS)}"),
        ];
    }

    // All of it in one turn, the drawing too.
    private Task<IResult> OnCoat(long id, Func<Job, JobCoat, IResult> work, CancellationToken cancellationToken) =>
        turns.Do(() => OnCoat(id, work), cancellationToken);

    private IResult OnCoat(long id, Func<Job, JobCoat, IResult> work)
    {
        try
        {
            return store.FindByCoat(id) is { } job && job.Coats.FirstOrDefault(coat => coat.Id == id) is { } coat
                ? work(job, coat)
                : TypedResults.Problem(title: "No such coat", detail: $"coat {id} does not exist; /api/coats lists them", statusCode: StatusCodes.Status404NotFound);
        }
        catch (JobRuleException rule)
        {
            return TypedResults.Problem(title: "This coat cannot be run again", detail: rule.Message, statusCode: StatusCodes.Status409Conflict);
        }
        catch (JournalException trouble)
        {
            return TypedResults.Problem(title: "The journal is not to be had", detail: trouble.Message, statusCode: StatusCodes.Status503ServiceUnavailable);
        }
    }
}
