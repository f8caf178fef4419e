using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Json.Schema;

namespace BoothWatch.Service.Tests.Outputs.Mqtt;

/// <summary>The documented topics, docs/topics/asyncapi.json.</summary>
internal sealed class AsyncApi
{
    private readonly JsonNode _document = JsonNode.Parse(RepositoryFile.Read("docs/topics/asyncapi.json"))!;

    public JsonNode Document => _document;

    public IReadOnlyList<Operation> Operations =>
    [
        .. _document["operations"]!.AsObject().Select(operation =>
        {
            string channel = ((string)operation.Value!["channel"]!["$ref"]!).Split('/')[^1];
            JsonNode message = _document["components"]!["messages"]![channel]!;
            return new Operation(
                (string)operation.Value["action"]!,
                (string)_document["channels"]![channel]!["address"]!,
                (string)message["contentType"]!,
                SchemaOf(message["payload"]!),
                operation.Value["bindings"]!["mqtt"]!);
        }),
    ];

    // The schemas of the document refer to one another, so each gets them all, where JSON Schema 2020-12 keeps such.
    private JsonSchema SchemaOf(JsonNode payload)
    {
        JsonObject schema = payload.DeepClone().AsObject();
        schema["$schema"] = "https://json-schema.org/draft/2020-12/schema";
        schema["$defs"] = _document["components"]!["schemas"]!.DeepClone();
        return JsonSchema.FromText(schema.ToJsonString().Replace("#/components/schemas/", "#/$defs/", StringComparison.Ordinal));
    }

    internal sealed record Operation(string Action, string Address, string ContentType, JsonSchema Schema, JsonNode Mqtt)
    {
        public bool Covers(string topic) =>
            Regex.IsMatch(topic, $"^{Regex.Replace(Regex.Escape(Address), @"\\\{[a-z]+}", "[a-z0-9-]+")}$");

        public bool Accepts(string payload)
        {
            using JsonDocument document = JsonDocument.Parse(ContentType == "text/plain" ? JsonSerializer.Serialize(payload) : payload);
            return Schema.Evaluate(document.RootElement, new EvaluationOptions { RequireFormatValidation = true }).IsValid;
        }
    }
}
