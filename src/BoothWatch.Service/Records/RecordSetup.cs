using BoothWatch.Service.Coat;
using BoothWatch.Service.Page;
using BoothWatch.Service.Records.Pdf;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Records;

/// <summary>Registers the record of a job.</summary>
public static class RecordSetup
{
    /// <summary>
    /// Adds what makes records and writes them out. Needs the journal's location and query, the sensors and the booth section.
    /// Register a <see cref="LastCheckOf"/> before it to have checks of sensors in the record.
    /// </summary>
    public static IServiceCollection AddRecords(this IServiceCollection services)
    {
        services.AddOptionsWithValidateOnStart<RecordOptions>().BindConfiguration(RecordOptions.Section);
        services.AddSingleton<IValidateOptions<RecordOptions>, RecordOptionsValidator>();
        services.TryAddSingleton(TimeProvider.System);
        services.TryAddSingleton<OneAtATime>();
        services.TryAddSingleton<LastCheckOf>(_ => (_, _) => null);
        return services
            .AddSingleton<RecordAirQuery>()
            .AddSingleton<RecordMaker>()
            .AddSingleton(provider => new RecordText(
                new DegreeText(provider.GetRequiredService<IOptions<BoothOptions>>().Value.Unit),
                provider.GetRequiredService<TimeProvider>().LocalTimeZone))
            .AddSingleton<RecordTable>()
            .AddSingleton(provider => new RecordPdf(
                provider.GetRequiredService<RecordText>(), provider.GetRequiredService<IOptions<RecordOptions>>().Value))
            .AddSingleton<RecordEndpoints>();
    }
}
