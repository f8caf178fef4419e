using System.Text.Json;
using Json.Schema;

namespace BoothWatch.Service.Tests.Advice;

/// <summary>The documented schema of the answers.</summary>
internal static class AdviseSchema
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(RepositoryFile.Read("docs/advise.schema.json"));

    public static bool Accepts(string json) => Schema.Evaluate(Parse(json)).IsValid;

    public static JsonElement Parse(string json)
    {
        using var document = JsonDocument.Parse(json);
        return document.RootElement.Clone();
    }
}
