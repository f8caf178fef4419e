using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Outputs.Influx;

/// <summary>Registers shipping to InfluxDB. Off while <c>influx:url</c> is empty.</summary>
public static class InfluxSetup
{
    /// <summary>Adds shipping. Every registered <see cref="IJournalFeed"/> is shipped, tagged with the registered <see cref="BoothTags"/>.</summary>
    public static IServiceCollection AddInflux(this IServiceCollection services)
    {
        services.AddOptionsWithValidateOnStart<InfluxOptions>().BindConfiguration(InfluxOptions.Section);
        services.AddSingleton<IValidateOptions<InfluxOptions>, InfluxOptionsValidator>();
        services.TryAddSingleton(TimeProvider.System);
        services.AddSingleton(provider => provider.GetRequiredService<IOptions<InfluxOptions>>().Value);
        services.AddSingleton<InfluxWriter>();
        services.AddSingleton<Points>();
        services.AddSingleton(provider => new InfluxShipper(
            provider.GetServices<IJournalFeed>(),
            provider.GetRequiredService<InfluxOptions>().IsOn ? provider.GetRequiredService<InfluxWriter>() : null,
            provider.GetRequiredService<Points>(),
            provider.GetRequiredService<InfluxOptions>(),
            provider.GetRequiredService<TimeProvider>(),
            provider.GetRequiredService<ILogger<InfluxShipper>>()));
        return services.AddHostedService(provider => provider.GetRequiredService<InfluxShipper>());
    }
}
