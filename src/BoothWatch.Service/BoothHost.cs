using System.Globalization;
using BoothWatch.Service.Assessing;
using BoothWatch.Service.Coat;
using BoothWatch.Service.Configuration;
using BoothWatch.Service.Logging;
using BoothWatch.Service.Outputs.Light;
using BoothWatch.Service.Outputs.Pump;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Page;
using BoothWatch.Service.Sensors;
using BoothWatch.Service.Sensors.Emulation;
using BoothWatch.Service.Sensors.TypedPiece;
using BoothWatch.Verdicts;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service;

/// <summary>Puts the booth together: one line a folder, along the flow of the data. Folders that may not know each other meet here.</summary>
public static class BoothHost
{
    /// <summary>Builds the service from a configuration file; nothing runs yet.</summary>
    /// <param name="file">The configuration.</param>
    /// <param name="time">The clock of everything but the emulated chips; null: that of the machine.</param>
    public static WebApplication Build(ConfigurationFile file, TimeProvider? time = null)
    {
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder();
        builder.Configuration.Sources.Clear();
        builder.Configuration.AddConfiguration(file.Configuration);

        builder.Services.AddSingleton(time ?? TimeProvider.System);
        builder.Services.AddBoothLogging();
        builder.Services.AddSystemd();
        builder.Services.AddSensing();
        builder.Services.AddCoat(file, DemoCup);
        builder.Services.AddSeries(AnyEmulated);
        builder.Services.AddSingleton<IHistory, JournalHistory>();
        builder.Services.AddSingleton(PageSourcesOf);
        builder.Services.AddPage();
        builder.Services.AddOutput<PageFeed>(pump => pump.Capacity = 1);
        builder.Services.AddLight();
        builder.Services.AddSingleton<IValidateOptions<LightOptions>, SharedPinValidator>();
        builder.Services.AddAssessing(AllEmulated);

        return builder.Build().MapPage();
    }

    private static bool AnyEmulated(IServiceProvider services) => services.GetServices<ISensor>().Any(sensor => sensor.IsEmulated);

    private static bool AllEmulated(IServiceProvider services) => services.GetServices<ISensor>().All(sensor => sensor.IsEmulated);

    private static double? DemoCup(IServiceProvider services) =>
        AllEmulated(services) ? services.GetRequiredService<IOptions<DemoOptions>>().Value.CupRetarderPct : null;

    private static PageSources PageSourcesOf(IServiceProvider services)
    {
        BoothOptions booth = services.GetRequiredService<IOptions<BoothOptions>>().Value;
        AssessmentFanOut outputs = services.GetRequiredService<AssessmentFanOut>();
        BoothLight light = services.GetRequiredService<BoothLight>();
        ShopClock shop = services.GetRequiredService<ShopClock>();
        bool isDemo = AnyEmulated(services);
        return new PageSources
        {
            Shop = booth.Shop,
            Booth = booth.Name,
            TemperatureUnit = booth.Unit,
            Sensors = PageSources.Describe(services.GetServices<ISensor>()),
            PieceEntry = PieceEntryOf(services),
            Outputs = () => [LineOf(light), .. outputs.Health.Select(LineOf)],
            Demo = () => isDemo ? new DemoMoment(shop.Now.ToString(), shop.Phase, shop.Speed, shop.IsNewDay) : null,
        };
    }

    private static PieceEntry? PieceEntryOf(IServiceProvider services)
    {
        TypedPieceTemperature typed = services.GetRequiredService<TypedPieceTemperature>();
        return services.GetServices<ISensor>().OfType<TypedPieceSensor>().SingleOrDefault() is { } sensor
            ? new PieceEntry(TypedPieceTemperature.LowestC, TypedPieceTemperature.HighestC, sensor.Hold, typed.Enter, () => typed.Last?.Age)
            : null;
    }

    private static OutputLine LineOf(BoothLight light)
    {
        LightHealth health = light.Health;
        return health switch
        {
            { Faulty: true } => new OutputLine("light", false, $"shows wait where it can: {health.LastFault}"),
            { LoopSilent: true } => new OutputLine("light", false, "shows wait: the loop is silent"),
            _ => new OutputLine("light", true, $"shows {health.Shown.Word()}"),
        };
    }

    private static OutputLine LineOf(OutputHealth health) => new(
        health.Name,
        !health.IsFailing,
        health switch
        {
            { IsFailing: true } => $"failing, {health.Queued} waiting: {health.LastError}",
            { Dropped: > 0 } => string.Create(CultureInfo.InvariantCulture, $"working, {health.Dropped} lost since start"),
            _ => "working",
        });
}
