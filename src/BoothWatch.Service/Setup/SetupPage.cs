using System.Collections;
using BoothWatch.Service.Access;
using BoothWatch.Service.Assessing;
using BoothWatch.Service.Configuration;
using BoothWatch.Service.Outputs.Light;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Page;
using BoothWatch.Service.Sensors;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Setup;

/// <summary>Registers the setup page and maps its addresses.</summary>
public static class SetupPage
{
    /// <summary>Adds the setup page. Needs the materials, the sensors, the light, the journal, the alerts and the board of readings.</summary>
    /// <param name="services">The container.</param>
    /// <param name="file">The configuration that the program runs with.</param>
    public static IServiceCollection AddSetup(this IServiceCollection services, ConfigurationFile file) => services
        .AddSingleton(provider => new ConfigurationEditor(file, provider.GetRequiredService<ILogger<ConfigurationEditor>>()))
        .AddSingleton<Confirmations>()
        .AddSingleton(provider => new SensorScan(
            provider.GetRequiredService<I2cBusSource>(),
            provider.GetRequiredService<SnapshotBoard>(),
            provider.GetRequiredService<IOptions<SensorsOptions>>(),
            provider.GetRequiredService<TimeProvider>(),
            provider.GetRequiredService<I2cBusSource>().IsOnBoard))
        .AddSingleton(provider => new LampTrials(Path.GetDirectoryName(provider.GetRequiredService<JournalLocation>().Path)!))
        .AddSingleton(provider => new LampCommand(file, provider.GetRequiredService<JournalLocation>(), Variables()))
        .AddSingleton(provider => ActivatorUtilities.CreateInstance<SetupState>(provider, file))
        .AddSingleton<SetupEndpoints>()
        .AddSingleton<SensorEndpoints>();

    /// <summary>Maps the setup page and its JSON. Call it after <see cref="PageSetup.MapPage"/>.</summary>
    public static WebApplication MapSetup(this WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        SetupEndpoints setup = app.Services.GetRequiredService<SetupEndpoints>();
        app.MapFiles("setup", ("/setup", "setup.html"), ("/setup-sensors.js", "setup-sensors.js"), ("/setup.js", "setup.js"), ("/setup.css", "setup.css"));

        app.MapGet("/api/setup", setup.Now).Named("setup", "How far the booth is set up", "The steps of the checklist, the settings that may be changed here, the configuration file and the light.");
        RouteGroupBuilder changes = app.MapGroup("/api/setup").RequireChange();
        changes.MapPost("/settings", setup.Change).Named(
            "setup-settings", "Change settings in the configuration file", "JSON body: version (from /api/setup), values (full keys to texts, numbers or null). Checked as a whole first; takes effect at the next start.");
        SensorEndpoints sensors = app.Services.GetRequiredService<SensorEndpoints>();
        changes.MapPost("/sensors/preview", sensors.Preview)
            .Named("setup-sensors-preview", "What a choice of sensors would change", "Body as for setup-sensors. Nothing is written.")
            .Produces<PlanAnswer>();
        changes.MapPost("/sensors", sensors.Write).Named(
            "setup-sensors", "Write which part measures what into the configuration file",
            "JSON body: version (from /api/setup), sensors (a list of role, part, and where it has them source, bus, address, pin), light (emulated or real), proving (true or false). Checked as a whole first; takes effect at the next start.");
        changes.MapPost("/undo", setup.Undo).Named("setup-undo", "Put the earlier version of the configuration file back", "JSON body: version (from /api/setup).");
        changes.MapPost("/confirm", setup.Confirm).Named("setup-confirm", "Confirm what was seen", "JSON body: id (booth, materials, green, yellow, red, buzzer).");
        changes.MapPost("/scan", setup.Scan)
            .WithName("setup-scan")
            .WithSummary("Look for parts on the I2C buses")
            .WithDescription("{}. Parts that are configured are taken from their last reading and not asked.")
            .Produces<ScanAnswer>();
        return app;
    }

    private static Dictionary<string, string> Variables() => Environment.GetEnvironmentVariables().Cast<DictionaryEntry>()
        .ToDictionary(variable => (string)variable.Key, variable => variable.Value as string ?? "", StringComparer.Ordinal);

    private static RouteHandlerBuilder Named(this RouteHandlerBuilder route, string name, string summary, string description) => route
        .WithName(name)
        .WithSummary(summary)
        .WithDescription(description)
        .Produces<SetupAnswer>()
        .ProducesProblem(StatusCodes.Status400BadRequest)
        .ProducesProblem(StatusCodes.Status409Conflict);
}
