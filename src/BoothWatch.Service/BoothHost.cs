using System.Globalization;
using BoothWatch.Service.Assessing;
using BoothWatch.Service.Coat;
using BoothWatch.Service.Configuration;
using BoothWatch.Service.Jobs;
using BoothWatch.Service.Logging;
using BoothWatch.Service.Outputs.Influx;
using BoothWatch.Service.Outputs.Light;
using BoothWatch.Service.Outputs.Metrics;
using BoothWatch.Service.Outputs.Pump;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Page;
using BoothWatch.Service.Sensors;
using BoothWatch.Service.Sensors.Emulation;
using BoothWatch.Verdicts;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service;

/// <summary>Puts the booth together: one line a folder, along the flow of the data. Folders that may not know each other meet here.</summary>
public static class BoothHost
{
    /// <summary>Builds the service from a configuration file; nothing runs yet.</summary>
    public static WebApplication Build(ConfigurationFile file)
    {
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder();
        builder.Configuration.Sources.Clear();
        builder.Configuration.AddConfiguration(file.Configuration);

        builder.Services.AddBoothLogging();
        builder.Services.AddSystemd();
        builder.Services.AddSensing();
        builder.Services.AddCoat(file, DemoCup);
        builder.Services.AddSeries(AnyEmulated);
        JournalFeed.Register(builder.Services).AddInflux();
        builder.Services.AddSingleton<IHistory, JournalHistory>();
        builder.Services.AddSingleton(PageSourcesOf);
        builder.Services.AddPage();
        builder.Services.AddOutput<PageFeed>(pump => pump.Capacity = 1);
        builder.Services.AddJobs(file);
        builder.Services.AddSingleton(PlaceOf);
        builder.Services.AddSingleton(HealthOf);
        builder.Services.AddBoothMetrics();
        builder.Services.AddLight();
        builder.Services.AddAssessing(AllEmulated);

        return builder.Build().MapPage().MapJobs().MapBoothMetrics();
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

    private static double? DemoCup(IServiceProvider services) =>
        AllEmulated(services) ? services.GetRequiredService<IOptions<DemoOptions>>().Value.CupRetarderPct : null;

    private static PageSources PageSourcesOf(IServiceProvider services)
    {
        BoothOptions booth = services.GetRequiredService<IOptions<BoothOptions>>().Value;
        Func<IReadOnlyList<OutputHealth>> outputs = HealthOf(services);
        BoothLight light = services.GetRequiredService<BoothLight>();
        ShopClock shop = services.GetRequiredService<ShopClock>();
        bool isDemo = AnyEmulated(services);
        return new PageSources
        {
            Shop = booth.Shop,
            Booth = booth.Name,
            Sensors = PageSources.Describe(services.GetServices<ISensor>()),
            Outputs = () => [LineOf(light), .. outputs().Select(LineOf)],
            Health = () => [StatusOf(light), .. outputs().Select(StatusOf)],
            Demo = () => isDemo ? new DemoMoment(shop.Now.TimeOfDay.ToString(@"hh\:mm", CultureInfo.InvariantCulture), shop.Phase) : null,
        };
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
            { IsFailing: true, OldestWaiting: { } age } => $"failing, {health.Queued} waiting, the oldest for {AgeText(age)}: {health.LastError}",
            { IsFailing: true } => $"failing, {health.Queued} waiting: {health.LastError}",
            { Dropped: > 0 } => $"working, {health.Dropped} lost since start",
            { SetAside: > 0 } => $"working, {health.SetAside} refused by the receiver and set aside",
            _ => "working",
        });

    private static string AgeText(TimeSpan age) => age switch
    {
        { TotalSeconds: < 100 } => string.Create(CultureInfo.InvariantCulture, $"{Math.Max(0, age.TotalSeconds):0} s"),
        { TotalMinutes: < 100 } => string.Create(CultureInfo.InvariantCulture, $"{age.TotalMinutes:0} min"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{age.TotalHours:0} h"),
    };

    private static OutputStatus StatusOf(BoothLight light)
    {
        LightHealth health = light.Health;
        return new OutputStatus
        {
            Name = "light",
            Working = health is { Faulty: false, LoopSilent: false },
            LastError = health.LastFault,
        };
    }

    private static OutputStatus StatusOf(OutputHealth health) => new()
    {
        Name = health.Name,
        Working = !health.IsFailing,
        Handled = health.Handled,
        Dropped = health.Dropped,
        SetAside = health.SetAside,
        Failures = health.Failures,
        Backlog = health.Queued,
        BacklogAgeS = health.OldestWaiting is { } age ? Math.Round(age.TotalSeconds, 1) : null,
        LastSuccess = health.LastSuccess?.UtcDateTime,
        LastError = health.LastError,
        LastErrorTime = health.LastErrorTime?.UtcDateTime,
    };
}
