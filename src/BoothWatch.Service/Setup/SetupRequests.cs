using System.Text.Json;
using static BoothWatch.Service.Jobs.JsonAnswers;

namespace BoothWatch.Service.Setup;

/// <summary>Reading what is asked under /api/setup, and the ways to answer.</summary>
internal static class SetupRequests
{
    /// <summary>Longest text of a setting.</summary>
    public const int LongestText = 200;

    public static IResult Wrong(string what) => Problem(StatusCodes.Status400BadRequest, "The request is wrong", what);

    public static IResult? Answer(EditOutcome outcome) => outcome switch
    {
        { Refusal: { } why } => Problem(StatusCodes.Status409Conflict, "The file cannot be changed here", why),
        { IsStale: true } => Problem(StatusCodes.Status409Conflict, "The file has changed", "somebody has changed the file since this page was loaded; load it anew and look before you change it"),
        { Errors: { Count: > 0 } errors } => Problem(StatusCodes.Status400BadRequest, "Nothing was written", string.Join(". ", errors), errors),
        _ => null,
    };

    public static IResult Guard(Func<IResult> work)
    {
        try
        {
            return work();
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            return Problem(StatusCodes.Status409Conflict, "The disk refuses", $"{trouble.Message.TrimEnd('.')}; docs/setup.md says what the service must be allowed");
        }
    }

    public static async Task<IResult> WithBody(HttpRequest request, Func<JsonElement, IResult> work, CancellationToken cancel)
    {
        try
        {
            using JsonDocument document = await JsonDocument.ParseAsync(request.Body, cancellationToken: cancel);
            JsonElement body = document.RootElement.Clone();
            return body.ValueKind == JsonValueKind.Object
                ? await Task.Run(() => Guard(() => work(body)), cancel)
                : Wrong("send a JSON object, {} where there is nothing to say");
        }
        catch (JsonException error)
        {
            return Wrong($"the body is not valid JSON at line {error.LineNumber + 1}, byte {error.BytePositionInLine}");
        }
    }

    public static string? VersionIn(JsonElement body) =>
        body.TryGetProperty("version", out JsonElement version) && version.ValueKind == JsonValueKind.String && IsValue(version) ? version.GetString() : null;

    public static bool IsValue(JsonElement value)
    {
        try
        {
            return value.ValueKind is JsonValueKind.Number or JsonValueKind.Null
                || (value.ValueKind == JsonValueKind.String && value.GetString()!.Length <= LongestText);
        }
        catch (InvalidOperationException)
        {
            return false; // half of a surrogate pair
        }
    }
}
