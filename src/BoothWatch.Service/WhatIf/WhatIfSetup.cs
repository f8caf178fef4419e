using BoothWatch.Service.Advice;
using BoothWatch.Service.Assessing;
using BoothWatch.Service.Coat;
using BoothWatch.Service.Materials;
using BoothWatch.Service.Page;
using BoothWatch.Verdicts;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.WhatIf;

/// <summary>Registers what-if questions.</summary>
public static class WhatIfSetup
{
    /// <summary>Adds the answers to what-if questions. Needs the booth, the coat, the materials and the policy.</summary>
    public static IServiceCollection AddWhatIf(this IServiceCollection services)
    {
        services.TryAddSingleton<OneAtATime>();
        return services
            .AddSingleton(provider => new Adviser(
                AdviseDefaults.From(provider.GetRequiredService<IOptions<BoothOptions>>().Value, provider.GetRequiredService<IOptions<CoatOptions>>().Value),
                provider.GetRequiredService<MaterialCatalogue>(),
                PolicyNow(provider.GetRequiredService<PolicyInForce>())))
            .AddSingleton<WhatIfAdvice>();
    }

    private static Func<VerdictPolicy> PolicyNow(PolicyInForce policy) => () => policy.Current;
}
