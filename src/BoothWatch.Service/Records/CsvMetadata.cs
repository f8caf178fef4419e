using System.Text.Json;
using System.Text.Json.Nodes;
using BoothWatch.Service.Jobs;

namespace BoothWatch.Service.Records;

/// <summary>
/// The metadata file of the CSV after the W3C Recommendations "Model for Tabular Data and Metadata on the Web" and "Metadata Vocabulary for
/// Tabular Data" of 17 December 2015. Its note holds the whole record, so that table and metadata together can be verified.
/// </summary>
public static class CsvMetadata
{
    /// <summary>The media type.</summary>
    public const string MediaType = "application/csvm+json";

    /// <summary>What is added to the address of the table.</summary>
    public const string Suffix = "-metadata.json";

    private static readonly JsonSerializerOptions Indented = new(JobsJson.Options) { WriteIndented = true };

    /// <summary>The metadata, UTF-8.</summary>
    /// <param name="document">The record.</param>
    /// <param name="table">Address of the table, relative to that of the metadata.</param>
    public static byte[] Write(RecordDocument document, string table) => JsonSerializer.SerializeToUtf8Bytes(Build(document, table), Indented);

    internal static JsonObject Build(RecordDocument document, string table) => new()
    {
        ["@context"] = new JsonArray("http://www.w3.org/ns/csvw", new JsonObject { ["@language"] = "en" }),
        ["url"] = table,
        ["dc:title"] = $"Coats of job {document.Record.Job.Id}: {document.Record.Job.Details.Piece}",
        ["dc:description"] = $"One row a coat. {document.Record.Caution} Text that a spreadsheet might take for a formula has an apostrophe before it.",
        ["dc:publisher"] = document.Record.Shop,
        ["dc:identifier"] = "sha256:" + document.Sha256,
        ["dialect"] = new JsonObject
        {
            ["encoding"] = "utf-8",
            ["delimiter"] = ",",
            ["quoteChar"] = "\"",
            ["doubleQuote"] = true,
            ["lineTerminators"] = new JsonArray("\r\n"),
            ["header"] = true,
        },
        ["tableSchema"] = new JsonObject
        {
            ["columns"] = new JsonArray([.. RecordColumns.All.Select(Column)]),
            ["primaryKey"] = "coatId",
        },
        ["notes"] = new JsonArray(JsonNode.Parse(document.Element().GetRawText())),
    };

    private static JsonObject Column(RecordColumn column)
    {
        JsonObject json = new()
        {
            ["name"] = column.Name,
            ["titles"] = new JsonArray(column.Name, column.Title),
            ["datatype"] = column.Datatype,
            ["required"] = column.Required,
            ["dc:description"] = column.Description,
        };
        if (column.Unit is { } unit)
        {
            json["schema:unitText"] = unit.Symbol;
            json["schema:unitCode"] = unit.Code;
        }

        return json;
    }
}
