using System.Text.Json;
using System.Text.Json.Serialization;
using BoothWatch.Jobs;

namespace BoothWatch.Service.Jobs;

/// <summary>How the journal keeps a change: a word for its kind, and its fields as JSON. Part of the file format: words and names stay.</summary>
internal static class JobEntryJson
{
    private static readonly Dictionary<string, Type> Kinds = new()
    {
        ["job-started"] = typeof(JobStarted),
        ["job-corrected"] = typeof(JobCorrected),
        ["job-finished"] = typeof(JobFinished),
        ["coat-marked"] = typeof(CoatMarked),
        ["coat-stopped"] = typeof(CoatStopped),
        ["coat-corrected"] = typeof(CoatCorrected),
        ["outcome-marked"] = typeof(OutcomeMarked),
        ["taken-back"] = typeof(TakenBack),
    };

    private static readonly Dictionary<Type, string> Words = Kinds.ToDictionary(kind => kind.Value, kind => kind.Key);

    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web)
    {
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        NumberHandling = JsonNumberHandling.Strict,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false) },
    };

    /// <summary>The word for the kind of a change.</summary>
    public static string KindOf(JobChange change) => Words[change.GetType()];

    /// <summary>The fields of a change.</summary>
    public static string Write(JobChange change) => JsonSerializer.Serialize(change, change.GetType(), Json);

    /// <summary>The change from its word and fields.</summary>
    /// <exception cref="JsonException">The row does not hold what its kind promises.</exception>
    public static JobChange Read(string kind, string fields) => Kinds.TryGetValue(kind, out Type? type)
        ? (JobChange)(JsonSerializer.Deserialize(fields, type, Json) ?? throw new JsonException($"an entry of kind {kind} is empty"))
        : throw new JsonException($"an entry is of kind {kind}, which this program does not know");
}
