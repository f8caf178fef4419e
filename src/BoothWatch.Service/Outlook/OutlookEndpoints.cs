using BoothWatch.Service.Jobs;
using BoothWatch.Service.Page;
using Microsoft.AspNetCore.Http.HttpResults;

namespace BoothWatch.Service.Outlook;

/// <summary>What the addresses of the outlook answer. Nothing is worked out here: the keeper did.</summary>
internal sealed class OutlookEndpoints(OutlookKeeper keeper, OutlookWords words, DegreeText text, OutlookDrawing drawing) : IDisposable
{
    private readonly SemaphoreSlim _one = new(1, 1);

    public JsonHttpResult<OutlookAnswer> Outlook() => TypedResults.Json(OutlookAnswer.Of(keeper.State, words, text), JobsJson.Options);

    public async Task<IResult> Chart(HttpRequest request, CancellationToken cancellationToken)
    {
        QueryText query = new(request.Query);
        int width = query.Whole("width", 240, 2400, 720, "pixels");
        int height = query.Whole("height", 160, 1600, 330, "pixels");
        string theme = query.Word("theme", "dark", "light");
        if (query.Problem is { } problem)
        {
            return problem;
        }

        // One drawing at a time, however many ask.
        await _one.WaitAsync(cancellationToken);
        try
        {
            return TypedResults.Content(drawing.Draw(keeper.State, width, height, theme), "image/svg+xml");
        }
        finally
        {
            _one.Release();
        }
    }

    public void Dispose() => _one.Dispose();
}
