using BoothWatch.Service.Page;

namespace BoothWatch.Service.Reviews;

/// <summary>Maps the addresses of reviews.</summary>
public static class ReviewAddresses
{
    /// <summary>Maps the page of a review, its JSON and its charts. Call it after the page and the jobs.</summary>
    public static WebApplication MapReviews(this WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        ReviewEndpoints reviews = app.Services.GetRequiredService<ReviewEndpoints>();
        app.MapFiles("reviews", ("/coats/{id:long}/review", "review.html"), ("/review.js", "review.js"), ("/review.css", "review.css"));

        app.MapGet("/api/coats/{id:long}/review", reviews.Review)
            .WithName("coat-review")
            .WithSummary("What happened to a coat, and what would have held")
            .WithDescription("The coat run again in the air that was recorded: film temperature against dew point, margin, likeliest cause, and one thing at a time done otherwise. "
                + "finding is blushes, may-blush, holds or not-known; headline, story and words are for people and may be reworded. docs/review.md has the method.")
            .Produces<ReviewAnswer>()
            .ProducesProblem(StatusCodes.Status404NotFound)
            .ProducesProblem(StatusCodes.Status409Conflict)
            .ProducesProblem(StatusCodes.Status503ServiceUnavailable);
        app.MapGet("/coats/{id:long}/review.svg", reviews.Chart)
            .WithName("coat-review-chart")
            .WithSummary("The same, drawn")
            .WithDescription("Query: part (film: from landing to set; hours: from an hour before to two hours after), width 240 to 2400, height 160 to 1600, theme (dark or light).")
            .Produces<string>(contentType: "image/svg+xml")
            .ProducesProblem(StatusCodes.Status400BadRequest)
            .ProducesProblem(StatusCodes.Status404NotFound)
            .ProducesProblem(StatusCodes.Status409Conflict)
            .ProducesProblem(StatusCodes.Status503ServiceUnavailable);
        return app;
    }
}
