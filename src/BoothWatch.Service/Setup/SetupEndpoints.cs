using System.Text.Json;
using static BoothWatch.Service.Jobs.JsonAnswers;
using static BoothWatch.Service.Setup.SetupRequests;

namespace BoothWatch.Service.Setup;

/// <summary>What each address under /api/setup answers.</summary>
internal sealed class SetupEndpoints(SetupState state, ConfigurationEditor editor, Confirmations confirmations, SensorScan scan)
{
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
