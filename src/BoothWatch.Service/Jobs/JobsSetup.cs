using BoothWatch.Service.Configuration;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Jobs;

/// <summary>Registers jobs and coats.</summary>
public static class JobsSetup
{
    /// <summary>Adds the store, the desk, the button and the demo's past. Needs the journal, the coat, the page and the policy.</summary>
    /// <param name="services">The services.</param>
    /// <param name="file">The configuration file; its folder holds the schedules.</param>
    public static IServiceCollection AddJobs(this IServiceCollection services, ConfigurationFile file)
    {
        ArgumentNullException.ThrowIfNull(file);
        services.AddOptionsWithValidateOnStart<JobsOptions>().BindConfiguration(JobsOptions.Section);
        services.TryAddSingleton(TimeProvider.System);
        return services
            .AddSingleton<IValidateOptions<JobsOptions>, JobsOptionsValidator>()
            .AddSingleton(_ => SchedulesLoader.Load(file.SchedulesFolder))
            .AddSingleton<JobStore>()
            .AddSingleton<CoatAirQuery>()
            .AddSingleton<CoatPhysics>()
            .AddSingleton<CoatMoments>()
            .AddSingleton<CoatPrefill>()
            .AddSingleton<JobClock>()
            .AddSingleton<JobDesk>()
            .AddSingleton<JobAnswers>()
            .AddSingleton<JobEndpoints>()
            .AddHostedService<CoatButton>()
            .AddHostedService<DemoPast>();
    }
}
