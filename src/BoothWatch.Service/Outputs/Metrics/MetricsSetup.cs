using BoothWatch.Service.Outputs.Pump;
using Microsoft.Extensions.DependencyInjection.Extensions;
using OpenTelemetry.Metrics;
using OpenTelemetry.Resources;

namespace BoothWatch.Service.Outputs.Metrics;

/// <summary>Registers the figures and maps <c>/metrics</c> in the Prometheus and OpenMetrics text formats.</summary>
public static class MetricsSetup
{
    /// <summary>Address of the figures.</summary>
    public const string Address = "/metrics";

    /// <summary>Adds the figures. Needs a registered <see cref="BoothPlace"/> and a way to ask for the health of the outputs.</summary>
    public static IServiceCollection AddBoothMetrics(this IServiceCollection services)
    {
        services.TryAddSingleton(TimeProvider.System);
        services.AddOutput<MetricsOutput>(pump => pump.Capacity = 1);
        services.AddOpenTelemetry()
            .ConfigureResource(resource => resource.AddService("boothwatch"))
            .WithMetrics(metrics => metrics.AddMeter("BoothWatch.*").AddPrometheusExporter());
        return services;
    }

    /// <summary>Maps the address.</summary>
    public static WebApplication MapBoothMetrics(this WebApplication app)
    {
        app.MapPrometheusScrapingEndpoint(Address).ExcludeFromDescription();
        return app;
    }
}
