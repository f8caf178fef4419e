using BoothWatch.Service.Access;
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
        services.AddAccess();
        services.AddSingleton(provider =>
        {
            PageOptions page = provider.GetRequiredService<IOptions<PageOptions>>().Value;
            return new ServerCertificate(
                page.CertificateFile, page.KeyFile, provider.GetRequiredService<TimeProvider>(), provider.GetRequiredService<ILogger<ServerCertificate>>());
        });

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

        // Also under TLS: what is compressed on the way holds no secret, and streams are left out, which compression would hold up.
        services.AddResponseCompression(compression =>
        {
            compression.EnableForHttps = true;
            compression.MimeTypes = ["text/html", "text/css", "text/javascript", "application/json", "application/problem+json", "image/svg+xml"];
        });
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
        app.UseAccess();
        app.UseResponseCompression();
        app.UseExceptionHandler();
        app.UseStatusCodePages();
        app.MapAccess();

        app.MapGet("/", page.Page).ExcludeFromDescription();
        app.MapFiles("page", [.. PageAssets.OfTheGlance.Select(name => ("/" + name, name))]).OpenToAnyone();
        app.MapFiles("chart", [.. PageAssets.OfTheChartLibrary.Select(name => ("/chart/" + name, name))]).OpenToAnyone();
        app.MapGet("/api/view", page.ViewEvents).LimitStreams().ExcludeFromDescription();
        app.MapApi(page, app.Services.GetRequiredService<PieceTemperatureEndpoint>());
        app.MapGet("/api/openapi.json", (ApiDocument document, CancellationToken cancellationToken) => document.Answer(cancellationToken)).ExcludeFromDescription();
        return app;
    }
}
