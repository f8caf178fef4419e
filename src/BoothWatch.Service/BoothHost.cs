using BoothWatch.Service.Access;
using BoothWatch.Service.Alerts;
using BoothWatch.Service.Assessing;
using BoothWatch.Service.Checks;
using BoothWatch.Service.Coat;
using BoothWatch.Service.Configuration;
using BoothWatch.Service.Jobs;
using BoothWatch.Service.Limits;
using BoothWatch.Service.Logging;
using BoothWatch.Service.Outlook;
using BoothWatch.Service.Outputs.Influx;
using BoothWatch.Service.Outputs.Light;
using BoothWatch.Service.Outputs.Metrics;
using BoothWatch.Service.Outputs.Mqtt;
using BoothWatch.Service.Outputs.Pump;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Page;
using BoothWatch.Service.Records;
using BoothWatch.Service.Reviews;
using BoothWatch.Service.Sensors;
using BoothWatch.Service.Sensors.Emulation;
using BoothWatch.Service.Sensors.TypedPiece;
using BoothWatch.Service.Setup;
using BoothWatch.Service.WhatIf;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service;

/// <summary>Puts the booth together: one line a folder, along the flow of the data. Folders that may not know each other meet here.</summary>
public static class BoothHost
{
    /// <summary>Builds the service from a configuration file; nothing runs yet.</summary>
    /// <param name="file">The configuration.</param>
    /// <param name="time">The clock of everything but the emulated chips; null: that of the machine.</param>
    public static WebApplication Build(ConfigurationFile file, TimeProvider? time = null) => Build(file, time, _ => { });

    /// <summary>As above, with further services: how a test sees to it that a request seems to come from another machine.</summary>
    internal static WebApplication Build(ConfigurationFile file, TimeProvider? time, Action<IServiceCollection> more)
    {
        // Its own sources are dropped below; without this they would still watch every file under the working folder.
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions { Args = ["--hostBuilder:reloadConfigOnChange=false"] });
        builder.Configuration.Sources.Clear();
        builder.Configuration.AddConfiguration(file.Configuration);

        builder.Services.AddSingleton(time ?? TimeProvider.System);
        builder.Services.AddBoothLogging();
        builder.Services.AddSystemd();
        builder.Services.AddSensing();
        builder.Services.AddCoat(file, DemoCoat);
        builder.Services.AddSeries(AnyEmulated);
        JournalFeed.Register(builder.Services).AddInflux();
        builder.Services.AddSingleton<IHistory, JournalHistory>();
        builder.Services.AddSingleton<IVerdictChanges, JournalVerdictChanges>();
        builder.Services.AddSingleton<IMqttSubscriber, MqttAirFeed>();
        builder.Services.AddSingleton<IMqttCommand, MqttCoatCommand>();
        builder.Services.AddMqtt(builder.Configuration);
        builder.Services.AddSingleton(PageSourcesOf);
        builder.Services.AddPage();
        builder.Services.AddOutput<PageFeed>(pump => (pump.Capacity, pump.NewestOnly) = (1, true));
        builder.Services.AddJobs(file);
        builder.Services.AddLimit();
        builder.Services.AddOutlook();
        builder.Services.AddAlerts();
        builder.Services.AddWhatIf();
        builder.Services.AddChecks(services => AllEmulated(services) ? Speed(services) : 1);
        builder.Services.AddRecords();
        builder.Services.AddReviews();
        builder.Services.AddSingleton(PlaceOf);
        builder.Services.AddSingleton(HealthOf);
        builder.Services.AddBoothMetrics();
        builder.Services.AddLight();
        builder.Services.AddSingleton<IValidateOptions<LightOptions>, SharedPinValidator>();
        builder.Services.AddSingleton<IValidateOptions<LightOptions>, RealLightValidator>();
        builder.Services.AddAssessing(AllEmulated, Speed);
        builder.Services.AddSetup(file);
        more(builder.Services);

        return builder.Build()
            .MapPage()
            .MapJobs()
            .MapRecords()
            .MapWhatIf()
            .MapReviews()
            .MapLimit()
            .MapOutlook()
            .MapChecks()
            .MapAlerts()
            .MapSetup()
            .MapBoothMetrics();
    }

    private static bool AnyEmulated(IServiceProvider services) => services.GetServices<ISensor>().Any(sensor => sensor.IsEmulated);

    private static bool AllEmulated(IServiceProvider services) => services.GetServices<ISensor>().All(sensor => sensor.IsEmulated);

    private static BoothPlace PlaceOf(IServiceProvider services)
    {
        BoothOptions booth = services.GetRequiredService<IOptions<BoothOptions>>().Value;
        return new BoothPlace(booth.Shop, booth.Name);
    }

    /// <summary>Asks for the health of every output; looked up when asked, because an output may be who asks.</summary>
    private static Func<IReadOnlyList<OutputHealth>> HealthOf(IServiceProvider services) => () =>
        services.GetRequiredService<InfluxShipper>().Health is { } shipping
            ? [.. services.GetRequiredService<AssessmentFanOut>().Health, shipping]
            : services.GetRequiredService<AssessmentFanOut>().Health;

    private static double Speed(IServiceProvider services) => AnyEmulated(services) ? services.GetRequiredService<ShopClock>().Speed : 1;

    /// <summary>What the scripted shop says of the coat where the settings leave it open.</summary>
    private static CoatOptions DemoCoat(IServiceProvider services, CoatOptions coat) => !AllEmulated(services) ? coat : coat with
    {
        LoadedRetarderPct = coat.LoadedRetarderPct ?? services.GetRequiredService<IOptions<DemoOptions>>().Value.CupRetarderPct,
        PieceThicknessMm = coat.PieceThicknessMm ?? ScriptedShop.PieceThicknessMm,
    };

    private static PageSources PageSourcesOf(IServiceProvider services)
    {
        BoothOptions booth = services.GetRequiredService<IOptions<BoothOptions>>().Value;
        Func<IReadOnlyList<OutputHealth>> outputs = HealthOf(services);
        BoothLight light = services.GetRequiredService<BoothLight>();
        ShopClock shop = services.GetRequiredService<ShopClock>();
        ServerCertificate certificate = services.GetRequiredService<ServerCertificate>();
        bool isDemo = AnyEmulated(services);
        return new PageSources
        {
            Shop = booth.Shop,
            Booth = booth.Name,
            TemperatureUnit = booth.Unit,
            Sensors = PageSources.Describe(services.GetServices<ISensor>()),
            PieceEntry = PieceEntryOf(services),
            Outputs = () => [OutputView.LineOf(light), .. outputs().Select(OutputView.LineOf), .. OutputView.LineOf(certificate)],
            Health = () => [OutputView.StatusOf(light), .. outputs().Select(OutputView.StatusOf), .. OutputView.StatusOf(certificate)],
            Remark = services.GetRequiredService<CheckAnswers>().Reminder,
            HasJobs = true,
            HasOutlook = true,
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
}
