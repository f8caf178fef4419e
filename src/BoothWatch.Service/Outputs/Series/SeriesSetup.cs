using BoothWatch.Service.Outputs.Pump;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Outputs.Series;

/// <summary>Registers the journal, its output and its query.</summary>
public static class SeriesSetup
{
    /// <summary>Adds the journal.</summary>
    /// <param name="services">The services.</param>
    /// <param name="isDemo">True when any sensor is emulated: the journal is then a file of its own.</param>
    public static IServiceCollection AddSeries(this IServiceCollection services, Func<IServiceProvider, bool> isDemo)
    {
        services.AddOptionsWithValidateOnStart<SeriesOptions>().BindConfiguration(SeriesOptions.Section);
        services.AddSingleton<IValidateOptions<SeriesOptions>, SeriesOptionsValidator>();
        services.TryAddSingleton(TimeProvider.System);
        services.AddSingleton(provider => JournalLocation.Of(Options(provider), isDemo(provider)));
        services.AddSingleton(provider => new Journal(
            provider.GetRequiredService<JournalLocation>(),
            TimeSpan.FromSeconds(Options(provider).SyncEveryS),
            provider.GetRequiredService<TimeProvider>(),
            provider.GetRequiredService<ILogger<Journal>>()));
        services.AddSingleton(provider => new SeriesOutput(
            provider.GetRequiredService<Journal>(), Options(provider), provider.GetRequiredService<TimeProvider>()));
        services.AddSingleton<SeriesQuery>();
        return services.AddOutput<SeriesOutput>(pump =>
        {
            // Whatever fails here fails for every row (disk, lock), so hold on to the oldest until the queue overflows.
            pump.MaxAttempts = 1000;
            pump.LongestRetry = TimeSpan.FromSeconds(15);
        });
    }

    private static SeriesOptions Options(IServiceProvider provider) =>
        provider.GetRequiredService<IOptions<SeriesOptions>>().Value;
}
