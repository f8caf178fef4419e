using BoothWatch.Service.Assessing;
using BoothWatch.Service.Page;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Limits;

/// <summary>Registers the shop's own limit and maps its addresses.</summary>
public static class LimitSetup
{
    /// <summary>Adds the limit. Needs the jobs, the journal, the page and <see cref="PolicyInForce"/>.</summary>
    public static IServiceCollection AddLimit(this IServiceCollection services)
    {
        services.AddOptionsWithValidateOnStart<LimitOptions>().BindConfiguration(LimitOptions.Section);
        services.TryAddSingleton(TimeProvider.System);
        services.TryAddSingleton<OneAtATime>();
        return services
            .AddSingleton<IValidateOptions<LimitOptions>, LimitOptionsValidator>()
            .AddSingleton<LimitCoatQuery>()
            .AddSingleton<LimitKeeper>()
            .AddSingleton<LimitDrawing>()
            .AddSingleton<LimitEndpoints>()
            .AddHostedService(provider => provider.GetRequiredService<LimitKeeper>());
    }

    /// <summary>Maps the page of the limit, its JSON and its chart. Call it after <see cref="PageSetup.MapPage"/>.</summary>
    public static WebApplication MapLimit(this WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        LimitEndpoints limit = app.Services.GetRequiredService<LimitEndpoints>();
        app.MapFiles("limit", ("/limit", "limit.html"), ("/limit.js", "limit.js"), ("/limit.css", "limit.css"));

        app.MapGet("/api/limit", limit.Limit)
            .WithName("limit")
            .WithSummary("The shop's own limit")
            .WithDescription("The required margin by the shop's own coats, with its uncertainty and its evidence; what it would be while it is switched off.")
            .Produces<LimitAnswer>();
        app.MapGet("/limit.svg", limit.Chart)
            .WithName("limit-chart")
            .WithSummary("The evidence of the shop's own limit, drawn")
            .WithDescription("Query: width (240 to 2400), height (160 to 1600), theme (dark or light).")
            .Produces<string>(contentType: "image/svg+xml")
            .ProducesProblem(StatusCodes.Status400BadRequest);
        return app;
    }
}
