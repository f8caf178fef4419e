using Microsoft.Extensions.DependencyInjection.Extensions;

namespace BoothWatch.Service.Reviews;

/// <summary>Registers the reviews of coats.</summary>
public static class ReviewsSetup
{
    /// <summary>Adds the reviews. Needs the journal, the coat, the page, the policy and the jobs.</summary>
    public static IServiceCollection AddReviews(this IServiceCollection services)
    {
        services.TryAddSingleton<Page.OneAtATime>();
        return services
            .AddSingleton<ReviewAirQuery>()
            .AddSingleton<ReviewDesk>()
            .AddSingleton(provider => new ReviewDrawing(
                provider.GetRequiredService<Page.DegreeText>(), provider.GetRequiredService<TimeProvider>().LocalTimeZone))
            .AddSingleton<ReviewEndpoints>();
    }
}
