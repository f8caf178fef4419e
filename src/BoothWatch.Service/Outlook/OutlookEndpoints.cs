using BoothWatch.Service.Jobs;
using BoothWatch.Service.Page;
using Microsoft.AspNetCore.Http.HttpResults;

namespace BoothWatch.Service.Outlook;

/// <summary>What the addresses of the outlook answer. Nothing is worked out here: the keeper did.</summary>
internal sealed class OutlookEndpoints(OutlookKeeper keeper, OutlookWords words, DegreeText text, OutlookDrawing drawing, OneAtATime turns)
{
    public JsonHttpResult<OutlookAnswer> Outlook() => TypedResults.Json(OutlookAnswer.Of(keeper.State, words, text), JobsJson.Options);

    public async Task<IResult> Chart(HttpRequest request, CancellationToken cancellationToken)
    {
        QueryText query = new(request.Query);
        (int width, int height, string theme) = query.Picture();
        if (query.Problem is { } problem)
        {
            return problem;
        }

        return TypedResults.Content(await turns.Do(() => drawing.Draw(keeper.State, width, height, theme), cancellationToken), "image/svg+xml");
    }
}
