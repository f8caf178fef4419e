using BoothWatch.Film;
using BoothWatch.Service.Advice;
using BoothWatch.Service.Coat;
using BoothWatch.Service.Materials;
using BoothWatch.Service.Page;
using BoothWatch.Verdicts;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.WhatIf;

/// <summary>Maps the page of what-if questions and its JSON. Nothing here changes anything, and nothing here is the booth's verdict.</summary>
public static class WhatIfAddresses
{
    /// <summary>Maps <c>/what-if</c>, <c>/api/what-if</c> and <c>/api/what-if/choices</c>. Call it after <see cref="PageSetup.MapPage"/>.</summary>
    public static WebApplication MapWhatIf(this WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        app.MapFiles("what-if", ("/what-if", "what-if.html"), ("/what-if.js", "what-if.js"), ("/what-if.css", "what-if.css"));

        WhatIfAdvice advice = app.Services.GetRequiredService<WhatIfAdvice>();
        WhatIfChoices choices = ChoicesOf(app.Services);
        app.MapGet("/api/what-if", (HttpRequest request, CancellationToken cancellationToken) => Answer(advice, request.Query, cancellationToken))
            .WithName("what-if")
            .WithSummary("What the model and the rules say of an air and a coat that are given")
            .WithDescription("Parameters and answer are those of the command advise (docs/advise.md), but for mix. No reading of the booth is in it: it is not the booth's verdict. "
                + string.Join(' ', WhatIfAdvice.Arguments.Select(argument => $"{argument.Name}: {argument.Meaning.ToLowerInvariant()}, {argument.Range}.")))
            .Produces<AdviseReply>()
            .ProducesProblem(StatusCodes.Status400BadRequest);
        app.MapGet("/api/what-if/choices", () => TypedResults.Json(choices, PageJson.Options))
            .WithName("what-if-choices")
            .WithSummary("What may be chosen in a what-if question")
            .WithDescription("Kinds of coat with their usual mix, and the ids of config/materials.");
        return app;
    }

    private static async Task<Results<ContentHttpResult, ProblemHttpResult>> Answer(WhatIfAdvice advice, IQueryCollection query, CancellationToken cancellationToken)
    {
        var given = query.ToDictionary(pair => pair.Key, pair => pair.Value.ToString());
        (AdviseAnswer? found, IReadOnlyList<ArgumentError> errors) = await advice.Answer(given, cancellationToken);
        return found is { } answer
            ? TypedResults.Content(AdviseJson.Write(answer), "application/json; charset=utf-8")
            : TypedResults.Problem(
                title: "A parameter is wrong",
                detail: string.Join(". ", errors.Select(error => error.InTable)),
                statusCode: StatusCodes.Status400BadRequest,
                extensions: new Dictionary<string, object?> { ["parameters"] = errors.Select(error => error.Field).ToArray() });
    }

    private static WhatIfChoices ChoicesOf(IServiceProvider services)
    {
        CoatOptions coat = services.GetRequiredService<IOptions<CoatOptions>>().Value;
        MaterialCatalogue catalogue = services.GetRequiredService<MaterialCatalogue>();
        return new WhatIfChoices(
            services.GetRequiredService<IOptions<BoothOptions>>().Value.Unit == TemperatureUnit.Fahrenheit ? "F" : "C",
            WordOf(coat.Kind),
            [.. Enum.GetValues<CoatKind>().Select(kind => KindOf(kind, coat))],
            [.. catalogue.Thinners.Keys.Order(StringComparer.Ordinal)],
            coat.Thinner,
            [.. catalogue.Retarders.OrderBy(pair => pair.Key, StringComparer.Ordinal)
                .Select(pair => new WhatIfRetarder(pair.Key, coat.RetarderHighestPct ?? pair.Value.HighestLevelPct))],
            coat.Retarder,
            [.. catalogue.Substrates.Keys.Order(StringComparer.Ordinal)],
            coat.Substrate,
            coat.AirSpeedMPerS,
            coat.CupMl);
    }

    private static WhatIfKind KindOf(CoatKind kind, CoatOptions coat)
    {
        CoatHabits habits = CoatHabits.For(kind);
        CoatOptions? own = kind == coat.Kind ? coat : null;
        return new WhatIfKind(
            WordOf(kind), own?.LacquerParts ?? habits.LacquerParts, own?.ThinnerParts ?? habits.ThinnerParts, own?.WetFilmUm ?? habits.WetFilmUm);
    }

    private static string WordOf(CoatKind kind) => kind.ToString().ToLowerInvariant();
}
