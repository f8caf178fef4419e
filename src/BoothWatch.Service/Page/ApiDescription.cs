using System.Text.Json.Nodes;
using BoothWatch.Service.Access;
using Microsoft.OpenApi;

namespace BoothWatch.Service.Page;

/// <summary>Maps the documented addresses, each with what OpenAPI should say of it.</summary>
internal static class ApiDescription
{
    public static void MapApi(this WebApplication app, PageEndpoints page, PieceTemperatureEndpoint piece)
    {
        app.MapGet("/api/now", page.Now)
            .WithName("now")
            .WithSummary("The present state of the booth")
            .WithDescription("The whole latest assessment with its age. Without an assessment of the last 5 s the verdict is wait, and stale is true.")
            .Produces<NowAnswer>();

        app.MapGet("/api/events", page.Events)
            .LimitStreams()
            .WithName("events")
            .WithSummary("The state, live, as server-sent events")
            .WithDescription("Events of type assessment carry the same JSON as /api/now, about once a second, the present one first. "
                + "Events of type heartbeat keep the connection when there is no news; they are no data. The id counts assessments since start.")
            .Produces<NowAnswer>(contentType: "text/event-stream")
            .ProducesProblem(StatusCodes.Status429TooManyRequests)
            .ProducesProblem(StatusCodes.Status503ServiceUnavailable);

        app.MapGet("/api/health", page.Health)
            .WithName("health")
            .WithSummary("How the outputs fare")
            .WithDescription("Each output with what it handled, lost and has waiting, and its last error. Always 200 while the service answers: read 'working'.")
            .Produces<HealthAnswer>();

        app.MapGet("/api/history", page.History)
            .WithName("history")
            .WithSummary("The past")
            .WithDescription("Points from the journal, oldest first, thinned to about the number asked for. Times without data are absent.")
            .Produces<HistoryAnswer>()
            .ProducesProblem(StatusCodes.Status400BadRequest)
            .ProducesProblem(StatusCodes.Status503ServiceUnavailable)
            .AddOpenApiOperationTransformer((operation, _, _) => Describe(operation,
                Query("from", $"Begin, RFC 3339 with Z or an offset. Default: page:chartHours before 'to'. At most {PageEndpoints.LongestDays} days before 'to'.", JsonSchemaType.String, "2026-06-03T06:00:00Z", "date-time"),
                Query("to", "End, RFC 3339 with Z or an offset. Default: now.", JsonSchemaType.String, "2026-06-03T12:00:00Z", "date-time"),
                Query("points", $"About how many points, 2 to {PageEndpoints.MostPoints}. Default 500.", JsonSchemaType.Integer, 500),
                Query("shape", "points (default), or columns: the same as one list a quantity, a fifth as long.", JsonSchemaType.String, "points")));

        app.MapGet("/chart.svg", page.Chart)
            .WithName("chart")
            .WithSummary("The last hours, drawn")
            .WithDescription("Air, dew point, blush limit and coldest film over time, the verdicts below. Without 'hours': page:chartHours, or since start while sensors are emulated. "
                + "When the past cannot be read, a picture that says so, with status 503.")
            .Produces<string>(contentType: "image/svg+xml")
            .Produces<string>(StatusCodes.Status503ServiceUnavailable, "image/svg+xml")
            .ProducesProblem(StatusCodes.Status400BadRequest)
            .AddOpenApiOperationTransformer((operation, _, _) => Describe(operation,
                Query("hours", "Time span in hours, 0.1 to 72.", JsonSchemaType.Number, 6),
                Query("width", "Width in pixels, 240 to 2400. Default 720.", JsonSchemaType.Integer, 720),
                Query("height", "Height in pixels, 160 to 1600. Default 330.", JsonSchemaType.Integer, 330),
                Query("theme", "dark (default) or light.", JsonSchemaType.String, "dark")));

        app.MapPost("/api/piece-temperature", piece.Set)
            .RequireChange()
            .WithName("piece-temperature")
            .WithSummary("Take the piece temperature that a person measured by hand")
            .WithDescription("Only while sensors:piece:part is typed (else 409). Needs a signed-in session. "
                + "The value holds for sensors:piece:holdS, then the piece counts as unknown.")
            .Produces<PieceTemperatureAnswer>()
            .ProducesProblem(StatusCodes.Status400BadRequest)
            .ProducesProblem(StatusCodes.Status409Conflict)
            .AddOpenApiOperationTransformer((operation, _, _) =>
            {
                operation.RequestBody = PieceTemperatureBody();
                return Task.CompletedTask;
            });
    }

    public static Task Introduce(OpenApiDocument document)
    {
        document.Info.Title = "BoothWatch";
        document.Info.Version = typeof(ApiDescription).Assembly.GetName().Version?.ToString(3);
        document.Info.Description = "May this coat be sprayed now? Read-only, but for the piece temperature typed in by hand, for jobs and coats, for alerts (subscribed, tried, acknowledged), for settings, and for signing in and out. Temperatures in °C, whatever the page shows. "
            + "Every verdict is advice about the finish: no statement that the air is safe to breathe or cannot ignite.";
        document.Servers?.Clear();
        return Task.CompletedTask;
    }

    private static Task Describe(OpenApiOperation operation, params IOpenApiParameter[] parameters)
    {
        operation.Parameters = parameters;
        return Task.CompletedTask;
    }

    private static OpenApiRequestBody PieceTemperatureBody() => new()
    {
        Required = true,
        Content = new Dictionary<string, OpenApiMediaType>
        {
            ["application/json"] = new()
            {
                Schema = new OpenApiSchema
                {
                    Type = JsonSchemaType.Object,
                    Required = new HashSet<string> { "temperatureC" },
                    Properties = new Dictionary<string, IOpenApiSchema>
                    {
                        ["temperatureC"] = new OpenApiSchema
                        {
                            Type = JsonSchemaType.Number,
                            Description = "Surface of the piece, just measured, °C.",
                            Minimum = "-40",
                            Maximum = "80",
                            Examples = [PieceEntry.ExampleC],
                        },
                    },
                },
            },
        },
    };

    private static OpenApiParameter Query(string name, string description, JsonSchemaType type, JsonNode example, string? format = null) => new()
    {
        Name = name,
        In = ParameterLocation.Query,
        Description = description,
        Example = example,
        Schema = new OpenApiSchema { Type = type, Format = format },
    };
}
