using Microsoft.Extensions.DependencyInjection.Extensions;

namespace BoothWatch.Service.Outputs.Pump;

/// <summary>Registers outputs behind their pumps.</summary>
public static class OutputPumpSetup
{
    /// <summary>
    /// Adds an output with its own pump, and the <see cref="AssessmentFanOut"/>. Register outputs before the
    /// assessment loop: hosted parts stop in reverse order, so the loop stops first and the pumps flush after it.
    /// </summary>
    public static IServiceCollection AddOutput<TOutput>(
        this IServiceCollection services,
        Action<OutputPumpOptions>? configure = null)
        where TOutput : class, IAssessmentOutput
    {
        var options = new OutputPumpOptions();
        configure?.Invoke(options);
        services.TryAddSingleton(TimeProvider.System);
        services.TryAddSingleton<TOutput>();
        services.TryAddSingleton<AssessmentFanOut>();
        services.AddKeyedSingleton(typeof(TOutput), (provider, _) => new OutputPump(
            provider.GetRequiredService<TOutput>(),
            options,
            provider.GetRequiredService<TimeProvider>(),
            provider.GetRequiredService<ILogger<OutputPump>>()));
        services.AddSingleton(provider => provider.GetRequiredKeyedService<OutputPump>(typeof(TOutput)));

        // Not AddHostedService: it keeps only the first registration of a type, and every pump is of the same type.
        services.AddSingleton<IHostedService>(provider => provider.GetRequiredKeyedService<OutputPump>(typeof(TOutput)));
        return services;
    }
}
