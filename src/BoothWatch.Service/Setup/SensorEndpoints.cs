using System.Text.Json;
using BoothWatch.Service.Configuration;
using BoothWatch.Service.Jobs;
using BoothWatch.Service.Sensors;
using static BoothWatch.Service.Jobs.JsonAnswers;
using static BoothWatch.Service.Setup.SetupRequests;

namespace BoothWatch.Service.Setup;

/// <summary>Which part measures what: shown as the exact change of the file, and written.</summary>
internal sealed class SensorEndpoints(SetupState state, ConfigurationEditor editor)
{
    private const string Wanted =
        "send { \"version\": the file's mark from /api/setup, \"sensors\": [{ \"role\": \"boothAir\", \"part\": \"sht4x\", \"source\": \"real\", \"bus\": 1, \"address\": \"0x44\" }], \"light\": \"real\" }, a role once";

    private sealed record Choice(string? Role, string? Part, string? Source, int? Bus, string? Address, int? Pin);

    private sealed record Body(string? Version, IReadOnlyList<Choice?>? Sensors, string? Light, bool? Proving);

    public Task<IResult> Preview(HttpRequest request, CancellationToken cancel) => WithPlan(request, (_, plan, present) =>
    {
        EditPreview preview = editor.Preview(plan.Settings(present));
        string[] notes = preview.Errors.Count > 0 ? [] : [.. SensorPlan.Notes(preview.After.Configuration)];
        return Json(new PlanAnswer(preview.Changes, preview.Errors, notes));
    }, cancel);

    public Task<IResult> Write(HttpRequest request, CancellationToken cancel) => WithPlan(request, (version, plan, present) =>
        Answer(editor.Change(version, plan.Settings(present))) ?? Json(state.Now()), cancel);

    private Task<IResult> WithPlan(HttpRequest request, Func<string, SensorPlan, IConfiguration, IResult> work, CancellationToken cancel) => WithBody(request, json =>
    {
        if (Read(json) is not ({ } version, { } plan))
        {
            return Wrong(Wanted);
        }

        (ConfigurationFile present, string mark) = editor.Present();
        return mark != version ? Answer(EditOutcome.Changed)!
            : ConfigurationCheck.Errors(present) is { Count: > 0 } errors ? Answer(EditOutcome.Wrong([.. errors.Select(error => $"The file as it stands is not good: {error}")]))!
            : work(version, plan, present.Configuration);
    }, cancel);

    private static (string? Version, SensorPlan? Plan) Read(JsonElement json)
    {
        try
        {
            Body? body = json.Deserialize<Body>(JobsJson.Options);
            SensorChoice?[] choices = [.. (body?.Sensors ?? []).Select(Read)];
            bool isGood = choices.All(choice => choice is not null) && choices.DistinctBy(choice => choice?.Role).Count() == choices.Length;
            return isGood ? (body?.Version, new SensorPlan([.. choices.OfType<SensorChoice>()], body?.Light, body?.Proving)) : (null, null);
        }
        catch (Exception wrong) when (wrong is JsonException or InvalidOperationException)
        {
            return (null, null);
        }
    }

    // Whether the part exists, can do this and can be there is for the check of the configuration to say.
    private static SensorChoice? Read(Choice? given) =>
        given is { Part: { Length: <= LongestText } part } && SensorRole.All.FirstOrDefault(role => role.Name == given.Role) is { } role
            && (given.Source?.Length ?? 0) <= LongestText && (given.Address?.Length ?? 0) <= LongestText
            ? new SensorChoice(role, part, given.Source, given.Bus, given.Address, given.Pin)
            : null;
}
