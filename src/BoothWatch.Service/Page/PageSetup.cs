using BoothWatch.Service.Sensors;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Page;

/// <summary>Registers the page and maps its addresses.</summary>
public static class PageSetup
{
    /// <summary>
    /// Adds the page. Register <see cref="PageSources"/> and <see cref="IHistory"/> before it to show more than the assessment,
    /// and <see cref="PageFeed"/> as an output.
    /// </summary>
    public static IServiceCollection AddPage(this IServiceCollection services)
    {
        services.AddOptionsWithValidateOnStart<PageOptions>().BindConfiguration(PageOptions.Section);
        services.AddSingleton<IValidateOptions<PageOptions>, PageOptionsValidator>();
        services.AddSingleton<IConfigureOptions<KestrelServerOptions>, PageListening>();

        services.TryAddSingleton(TimeProvider.System);
        services.TryAddSingleton<IHistory, EmptyHistory>();
        services.TryAddSingleton(provider => new PageSources { Sensors = PageSources.Describe(provider.GetServices<ISensor>()) });
        services.TryAddSingleton<PageFeed>();
        services.AddSingleton(provider => new DegreeText(provider.GetRequiredService<PageSources>().TemperatureUnit));
        services.AddSingleton(provider => new ChartDrawing(
            provider.GetRequiredService<DegreeText>(), provider.GetRequiredService<TimeProvider>().LocalTimeZone));
        services.AddSingleton<ChartStore>();
        services.AddSingleton<LiveEvents>();
        services.AddSingleton<PageHtml>();
        services.AddSingleton<PageEndpoints>();
        services.AddSingleton<PieceTemperatureEndpoint>();
        services.AddHostedService<PageAnnouncement>();

        services.ConfigureHttpJsonOptions(json => PageJson.Apply(json.SerializerOptions));
        services.AddProblemDetails(problems => problems.CustomizeProblemDetails = problem =>
        {
            if (problem.ProblemDetails.Status == StatusCodes.Status500InternalServerError)
            {
                problem.ProblemDetails.Detail ??= "BoothWatch could not answer; its log says why";
            }
        });
        services.AddSingleton<ApiDocument>();
        services.AddOpenApi(api => api.AddDocumentTransformer((document, _, _) => ApiDescription.Introduce(document)));
        return services;
    }

    /// <summary>Maps the page, its files and the JSON.</summary>
    public static WebApplication MapPage(this WebApplication app)
    {
        PageEndpoints page = app.Services.GetRequiredService<PageEndpoints>();
        app.Use(PageHeaders.Add);
        app.UseExceptionHandler();
        app.UseStatusCodePages();

        app.MapGet("/", page.Page).ExcludeFromDescription();
        foreach ((string name, string mediaType) in PageAssets.MediaTypes)
        {
            byte[] bytes = PageAssets.Read(name);
            app.MapGet("/" + name, () => TypedResults.Bytes(bytes, mediaType)).ExcludeFromDescription();
        }

        app.MapGet("/api/view", page.ViewEvents).ExcludeFromDescription();
        app.MapApi(page, app.Services.GetRequiredService<PieceTemperatureEndpoint>());
        app.MapGet("/api/openapi.json", (ApiDocument document, CancellationToken cancellationToken) => document.Answer(cancellationToken)).ExcludeFromDescription();
        return app;
    }
}
