using BoothWatch.Service.Access;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Page;
using BoothWatch.Service.Records;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Checks;

/// <summary>Registers the checks of sensors and maps their addresses.</summary>
public static class ChecksSetup
{
    /// <summary>Adds the checks. Needs the journal, the sensors and the page; register it before the records and the assessing, which ask it.</summary>
    /// <param name="services">The services.</param>
    /// <param name="speed">Seconds of the shop in a second of the clock; 1 where any sensor is real.</param>
    public static IServiceCollection AddChecks(this IServiceCollection services, Func<IServiceProvider, double> speed)
    {
        services.AddOptionsWithValidateOnStart<ChecksOptions>().BindConfiguration(ChecksOptions.Section);
        services.AddSingleton<IValidateOptions<ChecksOptions>, ChecksOptionsValidator>();
        services.TryAddSingleton(provider => CheckLimits.Of(provider.GetRequiredService<IOptions<ChecksOptions>>().Value, speed(provider)));
        return services
            .AddChecksOnRecord()
            .AddSingleton<HoldFile>()
            .AddSingleton<CheckBook>()
            .AddSingleton(provider => provider.GetRequiredService<CheckBook>().Holds)
            .AddSingleton<PairDifferences>()
            .AddSingleton<CheckAnswers>()
            .AddSingleton<CheckEndpoints>()
            .AddHostedService<CheckWatch>();
    }

    /// <summary>Adds only what the record of a job says of checks. Needs the journal's location.</summary>
    public static IServiceCollection AddChecksOnRecord(this IServiceCollection services)
    {
        services.TryAddSingleton(TimeProvider.System);
        return services
            .AddSingleton(provider => new CheckStore(provider.GetService<Journal>(), provider.GetRequiredService<JournalLocation>()))
            .AddSingleton<LastChecks>()
            .AddSingleton<LastCheckOf>(provider => provider.GetRequiredService<LastChecks>().Of);
    }

    /// <summary>Maps the page of the checks and its JSON. Call it after <see cref="PageSetup.MapPage"/>.</summary>
    public static WebApplication MapChecks(this WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        CheckEndpoints checks = app.Services.GetRequiredService<CheckEndpoints>();
        app.MapFiles("checks", ("/checks", "checks.html"), ("/checks.js", "checks.js"), ("/checks.css", "checks.css"));

        app.MapGet("/api/checks", checks.Now)
            .WithName("checks")
            .WithSummary("Checks of the humidity sensors")
            .WithDescription("Each sensor with its last check, drift, due date, and the check that runs. A sensor under check is not used for the verdict.")
            .Produces<ChecksAnswer>();
        RouteGroupBuilder changes = app.MapGroup("/api/checks/{sensor}").RequireChange();
        changes.MapPost("/begin", checks.Begin).Named(
            "checks-begin", "Begin a check", "{}. From the answer on the sensor is not used for the verdict, across restarts, until it is back and has settled. Ask it before the sensor leaves its place.");
        changes.MapPost("/jar", checks.Jar).Named("checks-jar", "The sensor is in the closed jar", "JSON body: salt (lithium-chloride, magnesium-chloride, sodium-chloride, potassium-chloride).");
        changes.MapPost("/result", checks.Result).Named("checks-result", "Take the result in the jar", "{}. 409 with the reason while the reading has not settled.");
        changes.MapPost("/back", checks.Back).Named(
            "checks-back", "The sensor is back in its place", "JSON body: cancelled (true: the results do not count), certain (true: looked again, because it still reads what the jar gives). It is used again once its reading has settled.");
        changes.MapPost("/replaced", checks.Replaced).Named("checks-replaced", "The part was replaced", "{}. A fresh history begins.");
        return app;
    }

    private static void Named(this RouteHandlerBuilder route, string name, string summary, string description) => route
        .WithName(name)
        .WithSummary(summary)
        .WithDescription(description)
        .Produces<ChecksAnswer>()
        .ProducesProblem(StatusCodes.Status400BadRequest)
        .ProducesProblem(StatusCodes.Status409Conflict)
        .ProducesProblem(StatusCodes.Status503ServiceUnavailable);
}
