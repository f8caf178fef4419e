using BoothWatch.Service.Checks;
using BoothWatch.Service.Coat;
using BoothWatch.Service.Configuration;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Records;
using BoothWatch.Service.Sensors;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Commands.Record;

/// <summary>What makes records outside the running service: it reads the journal beside it and touches no hardware.</summary>
internal static class RecordServices
{
    public static ServiceProvider Build(ConfigurationFile file)
    {
        ServiceCollection services = new();
        services.AddSingleton<IConfiguration>(file.Configuration);
        services.AddLogging();
        services.AddSensing();
        services.AddOptions<BoothOptions>().BindConfiguration(BoothOptions.Section);
        services.AddOptions<SeriesOptions>().BindConfiguration(SeriesOptions.Section);
        services.AddSingleton(provider => JournalLocation.Of(
            provider.GetRequiredService<IOptions<SeriesOptions>>().Value,
            provider.GetServices<ISensor>().Any(sensor => sensor.IsEmulated)));
        services.AddSingleton<SeriesQuery>();
        services.AddChecksOnRecord();
        services.AddRecords();
        return services.BuildServiceProvider();
    }
}
