using System.Security.Cryptography;
using System.Text.Json;
using BoothWatch.Records;
using BoothWatch.Service.Jobs;

namespace BoothWatch.Service.Records;

/// <summary>
/// A record as it leaves the house: its data, the SHA-256 of the data, and when and by what it was written out. This is the JSON;
/// the PDF carries it as an attached file, the metadata of the CSV as a note. docs/record.schema.json describes it.
/// </summary>
/// <param name="Sha256">SHA-256 over the canonical form of <paramref name="Record"/>, 64 digits in lower case.</param>
/// <param name="Canonicalization">The canonical form.</param>
/// <param name="Issued">When and by what it was written out; not covered by the SHA-256.</param>
/// <param name="Record">The data.</param>
public sealed record RecordDocument(string Sha256, string Canonicalization, RecordIssue Issued, EnvironmentRecord Record)
{
    /// <summary>The canonical form that the SHA-256 is taken over.</summary>
    public const string Form = "RFC 8785";

    private static readonly JsonSerializerOptions Indented = new(JobsJson.Options) { WriteIndented = true };

    /// <summary>The document of a record.</summary>
    public static RecordDocument Of(EnvironmentRecord record, RecordIssue issued) =>
        new(Hash(JsonSerializer.SerializeToElement(record, JobsJson.Options)), Form, issued, record);

    /// <summary>SHA-256 over the canonical form of a record's data, 64 digits in lower case.</summary>
    /// <exception cref="FormatException">The data cannot be put in canonical form.</exception>
    public static string Hash(JsonElement record) => Convert.ToHexStringLower(SHA256.HashData(CanonicalJson.Bytes(record)));

    /// <summary>The document from its JSON.</summary>
    /// <exception cref="JsonException">It is not a document of the present layout.</exception>
    public static RecordDocument Read(JsonElement json) =>
        json.Deserialize<RecordDocument>(JobsJson.Options) ?? throw new JsonException("the document is null");

    /// <summary>The JSON, UTF-8.</summary>
    public byte[] Json() => JsonSerializer.SerializeToUtf8Bytes(this, Indented);

    /// <summary>The JSON as an element.</summary>
    internal JsonElement Element() => JsonSerializer.SerializeToElement(this, JobsJson.Options);
}
