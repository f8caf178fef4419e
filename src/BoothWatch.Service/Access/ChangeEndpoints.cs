using Microsoft.AspNetCore.Mvc;

namespace BoothWatch.Service.Access;

/// <summary>Marks endpoints for the gate.</summary>
public static class ChangeEndpoints
{
    /// <summary>
    /// Says that an endpoint, or a whole group, changes something: a signed-in session, asked from the own page. The gate asks the same
    /// of every POST, PUT, PATCH and DELETE that lacks the mark; the mark adds it to the API description and to what a GET changes.
    /// </summary>
    /// <param name="endpoints">The endpoint or group.</param>
    /// <param name="jsonOnly">Whether the body must be <c>application/json</c>.</param>
    public static TBuilder RequireChange<TBuilder>(this TBuilder endpoints, bool jsonOnly = true)
        where TBuilder : IEndpointConventionBuilder
    {
        endpoints.WithMetadata(new ChangeMark(jsonOnly));
        int[] refusals = jsonOnly ? [401, 403, 415, 429] : [401, 403, 429];
        return endpoints.WithMetadata([.. refusals.Select(Refusal)]);
    }

    /// <summary>
    /// Lets whoever reaches the page ask for an endpoint: a file that tells nothing of the booth, or a change that a token of its own
    /// guards. With <see cref="RequireChange"/> beside it, the change must still be asked from the own page.
    /// </summary>
    /// <param name="endpoints">The endpoint or group.</param>
    public static TBuilder OpenToAnyone<TBuilder>(this TBuilder endpoints)
        where TBuilder : IEndpointConventionBuilder => endpoints.WithMetadata(new AnyoneMark());

    private static object Refusal(int status) => new ProducesResponseTypeMetadata(status, typeof(ProblemDetails), ["application/problem+json"]);
}
