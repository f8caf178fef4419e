using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;

namespace BoothWatch.Service.Tests.Records;

/// <summary>Real records against the published schema.</summary>
public sealed class RecordSchemaTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(RepositoryFile.Read("docs/record.schema.json"));

    [Theory]
    [InlineData(0)]
    [InlineData(3)]
    [InlineData(14)]
    public void Record_OfAJob_IsValid(int coats) => Valid(SampleRecord.Document(coats).Json());

    [Theory]
    [InlineData("/record/coats/0/details/kind", "\"primer\"")]
    [InlineData("/record/coats/0/atStart/verdict", "\"go\"")]
    [InlineData("/record/coats/0/details/start", "\"yesterday\"")]
    [InlineData("/record/format", "2")]
    [InlineData("/sha256", "\"abc\"")]
    [InlineData("/record/air/0/points/0/temperatureC", "\"warm\"")]
    public void Record_WithAWrongValue_IsNot(string place, string value)
    {
        JsonNode json = JsonNode.Parse(SampleRecord.Document(3).Json())!;
        JsonNode at = json;
        string[] steps = place[1..].Split('/');
        foreach (string step in steps[..^1])
        {
            at = int.TryParse(step, out int index) ? at[index]! : at[step]!;
        }

        at[steps[^1]] = JsonNode.Parse(value);
        Assert.False(Evaluate(JsonSerializer.SerializeToElement(json)).IsValid);
    }

    internal static void Valid(ReadOnlyMemory<byte> json)
    {
        using JsonDocument document = JsonDocument.Parse(json);
        EvaluationResults results = Evaluate(document.RootElement);
        Assert.True(results.IsValid, string.Join("; ", (results.Details ?? []).Where(detail => detail.Errors is not null).SelectMany(detail => detail.Errors!.Select(error => $"{detail.InstanceLocation}: {error.Value}"))));
    }

    private static EvaluationResults Evaluate(JsonElement json) => Schema.Evaluate(json, new EvaluationOptions { OutputFormat = OutputFormat.List });
}
