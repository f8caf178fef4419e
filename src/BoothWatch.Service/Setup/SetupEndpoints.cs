using System.Text.Json;
using BoothWatch.Service.Jobs;

namespace BoothWatch.Service.Setup;

/// <summary>What each address under /api/setup answers.</summary>
internal sealed class SetupEndpoints(SetupState state, ConfigurationEditor editor, Confirmations confirmations, SensorScan scan)
{
    private const int LongestText = 200;

    public IResult Now() => Guard(() => Json(state.Now()));

    public Task<IResult> Change(HttpRequest request, CancellationToken cancel) => WithBody(request, body =>
    {
        if (VersionIn(body) is not { } version || !body.TryGetProperty("values", out JsonElement given) || given.ValueKind != JsonValueKind.Object)
        {
            return Wrong("send { \"version\": the file's mark from /api/setup, \"values\": { \"booth:name\": \"corner\" } }");
        }

        Dictionary<string, JsonElement> values = [];
        foreach (JsonProperty property in given.EnumerateObject())
        {
            if (SettingValues.Keys.FirstOrDefault(key => key.Equals(property.Name, StringComparison.OrdinalIgnoreCase)) is not { } key)
            {
                return Wrong($"{property.Name} is not changed here; known are {string.Join(", ", SettingValues.Keys)}, all else is edited in the file");
            }

            if (!values.TryAdd(key, property.Value) || !IsValue(property.Value))
            {
                return Wrong($"{key}: give it once, as a text of at most {LongestText} characters, a number or null");
            }
        }

        if (Answer(editor.Change(version, values)) is { } problem)
        {
            return problem;
        }

        // Who fills in a form says by it that this is right.
        foreach (IGrouping<bool, string> form in values.Keys.GroupBy(SettingValues.OfCoat.Contains))
        {
            TryConfirm(form.Key ? "materials" : "booth");
        }

        return Json(state.Now());
    }, cancel);

    public Task<IResult> Undo(HttpRequest request, CancellationToken cancel) => WithBody(request, body =>
        VersionIn(body) is not { } version ? Wrong("send { \"version\": the file's mark from /api/setup }")
        : Answer(editor.Undo(version)) ?? Json(state.Now()), cancel);

    public Task<IResult> Scan(HttpRequest request, CancellationToken cancel) => WithBody(request, _ => Json(scan.Look()), cancel);

    public Task<IResult> Confirm(HttpRequest request, CancellationToken cancel) => WithBody(request, body =>
        body.TryGetProperty("id", out JsonElement id) && id.ValueKind == JsonValueKind.String && IsValue(id) && Confirm(id.GetString()!)
            ? Json(state.Now())
            : Wrong("send { \"id\": booth, materials, green, yellow, red, or buzzer where one is fitted }"), cancel);

#pragma warning disable CA1859 // the callers put these beside other answers, so they have the common type
    private static IResult Json<T>(T value) => TypedResults.Json(value, JobsJson.Options);

    private static IResult Problem(int status, string title, string detail, IReadOnlyList<string>? errors = null) => TypedResults.Problem(
        title: title,
        detail: detail,
        statusCode: status,
        extensions: errors is null ? null : new Dictionary<string, object?> { ["errors"] = errors });

    private static IResult Wrong(string what) => Problem(StatusCodes.Status400BadRequest, "The request is wrong", what);
#pragma warning restore CA1859

    private static IResult? Answer(EditOutcome outcome) => outcome switch
    {
        { Refusal: { } why } => Problem(StatusCodes.Status409Conflict, "The file cannot be changed here", why),
        { IsStale: true } => Problem(StatusCodes.Status409Conflict, "The file has changed", "somebody has changed the file since this page was loaded; load it anew and look before you change it"),
        { Errors: { Count: > 0 } errors } => Problem(StatusCodes.Status400BadRequest, "Nothing was written", string.Join(". ", errors), errors),
        _ => null,
    };

    private static IResult Guard(Func<IResult> work)
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

    private static async Task<IResult> WithBody(HttpRequest request, Func<JsonElement, IResult> work, CancellationToken cancel)
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

    private static string? VersionIn(JsonElement body) =>
        body.TryGetProperty("version", out JsonElement version) && version.ValueKind == JsonValueKind.String && IsValue(version) ? version.GetString() : null;

    private static bool IsValue(JsonElement value)
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

    // The file is written by then; without the note the step stays open.
    private void TryConfirm(string id)
    {
        try
        {
            Confirm(id);
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
        }
    }

    private bool Confirm(string id)
    {
        if (state.SubjectOf(id) is not { } subject)
        {
            return false;
        }

        confirmations.Confirm(id, subject);
        return true;
    }
}
