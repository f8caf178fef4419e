using BoothWatch.Service.Page;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Outlook;

/// <summary>Registers the outlook and maps its addresses.</summary>
public static class OutlookSetup
{
    /// <summary>Adds the outlook. Needs the page, the journal, the coat, the sensors and the policy in force.</summary>
    public static IServiceCollection AddOutlook(this IServiceCollection services)
    {
        services.AddOptionsWithValidateOnStart<OutlookOptions>().BindConfiguration(OutlookOptions.Section);
        services.TryAddSingleton(TimeProvider.System);
        services.TryAddSingleton<OneAtATime>();
        return services
            .AddSingleton<IValidateOptions<OutlookOptions>, OutlookOptionsValidator>()
            .AddSingleton<OutlookClock>()
            .AddSingleton<OutlookWords>()
            .AddSingleton<OutlookKeeper>()
            .AddSingleton<OutlookDrawing>()
            .AddSingleton<OutlookEndpoints>()
            .AddHostedService(provider => provider.GetRequiredService<OutlookKeeper>());
    }

    /// <summary>Maps the page of the outlook, its JSON and its chart. Call it after <see cref="PageSetup.MapPage"/>.</summary>
    public static WebApplication MapOutlook(this WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        OutlookEndpoints outlook = app.Services.GetRequiredService<OutlookEndpoints>();
        app.MapFiles("outlook", ("/outlook", "outlook.html"), ("/outlook.js", "outlook.js"), ("/outlook.css", "outlook.css"), ("/outlook-tile.js", "outlook-tile.js"));

        app.MapGet("/api/outlook", outlook.Outlook)
            .WithName("outlook")
            .WithSummary("Is today a spray day, and for how long?")
            .WithDescription("How the blush margin of the cup may go on, from the changes of earlier days of this shop, with bands and with its score against 'as it is now'. "
                + "Silent where it does no better. An outlook is no verdict.")
            .Produces<OutlookAnswer>();
        app.MapGet("/outlook.svg", outlook.Chart)
            .WithName("outlook-chart")
            .WithSummary("The outlook, drawn")
            .WithDescription("Query: width (240 to 2400), height (160 to 1600), theme (dark or light).")
            .Produces<string>(contentType: "image/svg+xml")
            .ProducesProblem(StatusCodes.Status400BadRequest);
        return app;
    }
}
