using BoothWatch.Film;
using BoothWatch.Service.Coat;
using BoothWatch.Service.Configuration;
using BoothWatch.Service.Sensors;
using BoothWatch.Verdicts;
using BoothWatch.Warming;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Assessing;

/// <summary>Registers the board, the poller and the loop. Register outputs before it: hosted parts stop in reverse order.</summary>
public static class AssessingSetup
{
    /// <summary>Adds the assessment of the booth.</summary>
    /// <param name="services">The services.</param>
    /// <param name="isDemo">True when every sensor is emulated: then nobody files records, and the clock need not be proven by the kernel.</param>
    /// <param name="speed">Seconds of the shop in a second of the clock; 1 on a real booth.</param>
    public static IServiceCollection AddAssessing(this IServiceCollection services, Func<IServiceProvider, bool> isDemo, Func<IServiceProvider, double> speed)
    {
        services.AddOptions<ClockOptions>().BindConfiguration(ClockOptions.Section);
        services.TryAddSingleton(TimeProvider.System);
        services.AddSingleton(provider => new ClockProof(
            provider.GetRequiredService<TimeProvider>(),
            provider.GetRequiredService<IOptions<ClockOptions>>().Value.RequireSynchronised && !isDemo(provider),
            () => KernelClock.IsSynchronised() || BatteryClock.SetTheSystemClock("/sys", ClockProof.EarliestPlausible)));
        services.AddOptionsWithValidateOnStart<VerdictPolicy>().BindConfiguration(VerdictPolicy.Section);
        services.AddSingleton<IValidateOptions<VerdictPolicy>, VerdictPolicyValidator>();
        services.AddSingleton(provider => provider.GetRequiredService<IOptions<VerdictPolicy>>().Value
            .SpeakingIn(provider.GetRequiredService<IOptions<BoothOptions>>().Value.Unit));
        services.AddSingleton<PolicyInForce>();
        services.AddSingleton(provider => new Assessor(
            PolicyNow(provider.GetRequiredService<PolicyInForce>()),
            new BlushModel().Assess,
            provider.GetRequiredService<IOptions<BoothOptions>>().Value.AltitudeM));
        services.AddSingleton(provider => new WarmingTrail(speed(provider)));
        services.AddSingleton<SystemdWatchdog>();
        services.AddSingleton(provider => new SnapshotBoard(
            provider.GetServices<ISensor>(),
            provider.GetRequiredService<ClockProof>(),
            provider.GetRequiredService<TimeProvider>(),
            provider.GetRequiredService<IOptions<SensorsOptions>>().Value.Proving,
            provider.GetService<SensorHolds>()));
        services.AddSingleton(provider => new VerdictDwell(provider.GetRequiredService<VerdictPolicy>()));
        services.AddHostedService<SensorPoller>();
        return services.AddHostedService<AssessmentLoop>();
    }

    private static Func<VerdictPolicy> PolicyNow(PolicyInForce policy) => () => policy.Current;
}
