using BoothWatch.Service.Access;
using BoothWatch.Service.Outputs.Alerts;
using BoothWatch.Service.Page;

namespace BoothWatch.Service.Alerts;

/// <summary>Maps the addresses of alerts, and the files that make the page an app.</summary>
public static class AlertAddresses
{
    /// <summary>Maps the page of alerts, the JSON, the manifest and the worker. Call it after <see cref="PageSetup.MapPage"/>.</summary>
    public static WebApplication MapAlerts(this WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        AlertEndpoints alerts = app.Services.GetRequiredService<AlertEndpoints>();
        app.MapFiles(
            "alerts",
            ("/alerts", "alerts.html"),
            ("/alerts.js", "alerts.js"),
            ("/alerts.css", "alerts.css"),
            ("/worker.js", "worker.js"),
            ("/app.webmanifest", "app.webmanifest"),
            ("/app-icon.svg", "app-icon.svg"),
            ("/app-icon-192.png", "app-icon-192.png"),
            ("/app-icon-512.png", "app-icon-512.png"))
            .OpenToAnyone();

        app.MapGet("/api/alerts", alerts.State).Named("alerts", "Alerts and channels", "Every channel with its last success and last error, and the newest 50 alerts.").Produces<AlertsAnswer>();
        app.MapGet("/api/alerts/push-key", alerts.PushKey).Named("alerts-push-key", "Public key of Web Push", "What a browser subscribes with (applicationServerKey).");

        RouteGroupBuilder changes = app.MapGroup("").RequireChange();
        changes.MapPost("/api/alerts/test/{channel}", alerts.Test).Change("alerts-test", "Try a channel", "{}. Sends a test message and waits for the outcome, at most 15 s.").Produces<TestAnswer>();
        changes.MapPost("/api/alerts/{id}/acknowledge", alerts.Acknowledge).Change("alerts-acknowledge", "Acknowledge an alert", "{}").Produces<AlertRow>();
        changes.MapPost("/api/alerts/subscriptions", alerts.Subscribe).Change("alerts-subscribe", "Subscribe a phone", "endpoint, p256dh, auth: of the browser's subscription; name; replaces: the endpoint that it had before.");
        changes.MapPost("/api/alerts/subscriptions/remove", alerts.Unsubscribe).Change("alerts-unsubscribe", "Unsubscribe a phone", "endpoint.");

        app.MapPost("/api/alerts/acknowledge", alerts.AcknowledgeByToken).AddEndpointFilter<TokenRequestsOnly>().OpenToAnyone().RequireChange()
            .Named("alerts-acknowledge-token", "Acknowledge by the token of a message", "token. Without a session: the token acknowledges its own alert and can do nothing else.");
        return app;
    }

    private static RouteHandlerBuilder Named(this RouteHandlerBuilder route, string name, string summary, string description) =>
        route.WithName(name).WithSummary(summary).WithDescription(description).ProducesProblem(StatusCodes.Status503ServiceUnavailable);

    private static RouteHandlerBuilder Change(this RouteHandlerBuilder route, string name, string summary, string fields) =>
        route.Named(name, summary, "JSON body; needs a session. " + fields)
            .ProducesProblem(StatusCodes.Status400BadRequest)
            .ProducesProblem(StatusCodes.Status404NotFound)
            .ProducesProblem(StatusCodes.Status409Conflict);
}
