using System.Globalization;
using System.Text.Json;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Http.HttpResults;

namespace BoothWatch.Service.Page;

/// <summary>Takes the piece temperature that a person measured by hand.</summary>
internal sealed partial class PieceTemperatureEndpoint(PageSources sources, ILogger<PieceTemperatureEndpoint> logger)
{
    private const string Field = "temperatureC";
    private const string Example = """{"temperatureC": 18.5}""";
    private const long LongestBody = 1024;
    private static readonly JsonDocumentOptions Strict = new() { AllowDuplicateProperties = false, MaxDepth = 4 };

    public async Task<IResult> Set(HttpContext context, CancellationToken cancellationToken)
    {
        if (sources.PieceEntry is not { } entry)
        {
            return Refuse(StatusCodes.Status409Conflict, "The piece temperature is not typed in here",
                "the piece is not measured by hand: to type its temperature in, set sensors:piece:part to typed and restart BoothWatch");
        }

        (double temperatureC, string? wrong) = await ReadAsync(context, entry, cancellationToken);
        if (wrong is not null)
        {
            return TypedResults.Problem(
                title: "The piece temperature is wrong", detail: wrong, statusCode: StatusCodes.Status400BadRequest,
                extensions: new Dictionary<string, object?> { ["parameters"] = new[] { Field } });
        }

        entry.Enter(temperatureC);
        LogTaken(temperatureC);
        return TypedResults.Json(new PieceTemperatureAnswer(temperatureC, entry.Hold.TotalSeconds), PageJson.Options);
    }

    private static async Task<(double TemperatureC, string? Wrong)> ReadAsync(
        HttpContext context, PieceEntry entry, CancellationToken cancellationToken)
    {
        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } limit)
        {
            limit.MaxRequestBodySize = LongestBody;
        }

        string wanted = string.Create(CultureInfo.InvariantCulture, $"give °C from {entry.LowestC} to {entry.HighestC}, for example {Example}");
        try
        {
            using JsonDocument body = await JsonDocument.ParseAsync(context.Request.Body, Strict, cancellationToken);
            JsonElement given = body.RootElement;
            if (given.ValueKind != JsonValueKind.Object)
            {
                return (0, $"the body is {Quoted(given.GetRawText())}, no object; {wanted}");
            }

            if (!given.TryGetProperty(Field, out JsonElement value))
            {
                return (0, $"{Field} is missing; {wanted}");
            }

            bool isGood = value.ValueKind == JsonValueKind.Number
                && value.TryGetDouble(out double number) && number >= entry.LowestC && number <= entry.HighestC;
            return isGood ? (value.GetDouble(), null) : (0, $"{Field} is {Quoted(value.GetRawText())}; {wanted}");
        }
        catch (JsonException)
        {
            return (0, $"the body is no JSON; {wanted}");
        }
        catch (BadHttpRequestException)
        {
            return (0, $"the body cannot be read or is longer than {LongestBody} bytes; {wanted}");
        }
    }

    private static ProblemHttpResult Refuse(int status, string title, string detail) => TypedResults.Problem(title: title, detail: detail, statusCode: status);

    private static string Quoted(string? text) => string.IsNullOrEmpty(text) ? "missing" : text.Length <= 60 ? text : text[..60] + "...";

    [LoggerMessage(EventId = 1, Level = LogLevel.Information, Message = "Piece temperature typed in: {TemperatureC} °C")]
    private partial void LogTaken(double temperatureC);
}
