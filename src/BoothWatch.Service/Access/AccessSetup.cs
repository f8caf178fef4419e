using BoothWatch.Service.Page;
using Microsoft.AspNetCore.HttpOverrides;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Access;

/// <summary>Registers the gate and puts it before every address.</summary>
public static class AccessSetup
{
    /// <summary>Adds the gate. The page adds it for itself; register an <see cref="AccessFolder"/> before to keep secret and sessions elsewhere than beside the journal.</summary>
    public static IServiceCollection AddAccess(this IServiceCollection services)
    {
        services.AddOptionsWithValidateOnStart<AccessOptions>().BindConfiguration(AccessOptions.Section);
        services.TryAddSingleton(TimeProvider.System);
        services.TryAddSingleton(provider => AccessFolder.Of(provider.GetRequiredService<IConfiguration>()));
        return services
            .AddSingleton<IValidateOptions<AccessOptions>, AccessOptionsValidator>()
            .AddSingleton<Callers>()
            .AddSingleton<HostNames>()
            .AddSingleton<SharedSecret>()
            .AddSingleton<StartCode>()
            .AddSingleton<SessionStore>()
            .AddSingleton<AccessGate>()
            .AddSingleton<SignInEndpoints>()
            .AddRequestLimits();
    }

    /// <summary>Puts headers, limits and gate before everything mapped afterwards, and maps the sign-in.</summary>
    public static WebApplication UseAccess(this WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        Callers callers = app.Services.GetRequiredService<Callers>();
        app.Use(ResponseHeaders.Add);
        if (callers.Proxies.Count > 0)
        {
            app.Use(Callers.NotePeer);
            app.UseForwardedHeaders(ProxyHeaders(callers));
        }

        app.UseRateLimiter();
        app.Use(app.Services.GetRequiredService<AccessGate>().Invoke);
        return app;
    }

    /// <summary>Maps the page to sign in, and what every page needs of it.</summary>
    public static WebApplication MapAccess(this WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        SignInEndpoints endpoints = app.Services.GetRequiredService<SignInEndpoints>();
        app.MapFiles(
            "access", (AccessGate.SignInPage, "sign-in.html"), ("/sign-in.js", "sign-in.js"), ("/sign-in.css", "sign-in.css"), ("/access.js", "access.js"))
            .OpenToAnyone();

        app.MapGet("/api/session", endpoints.Session).OpenToAnyone()
            .WithName("session").WithSummary("Who asks").WithDescription("Whether the request brings a session, and what a sign-in takes. Needs nothing.")
            .Produces<SessionAnswer>();
        app.MapPost("/api/sign-in", endpoints.SignIn).OpenToAnyone().WithMetadata(new SignInMark()).RequireChange()
            .WithName("sign-in").WithSummary("Begin a session")
            .WithDescription("JSON body with the field secret; the answer sets the cookie of the session. Few tries a minute and address.")
            .Produces<SessionAnswer>().ProducesProblem(StatusCodes.Status400BadRequest).ProducesProblem(StatusCodes.Status503ServiceUnavailable);
        app.MapPost("/api/sign-out", endpoints.SignOut).OpenToAnyone().RequireChange()
            .WithName("sign-out").WithSummary("End the session").WithDescription("JSON body, {}. The session ends on the server.");
        return app;
    }

    private static ForwardedHeadersOptions ProxyHeaders(Callers callers)
    {
        ForwardedHeadersOptions options = new()
        {
            ForwardedHeaders = ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto | ForwardedHeaders.XForwardedHost,
            ForwardLimit = 1,
        };
        options.KnownProxies.Clear();
        options.KnownIPNetworks.Clear();
        foreach (System.Net.IPNetwork network in callers.Proxies)
        {
            options.KnownIPNetworks.Add(network);
        }

        return options;
    }
}
