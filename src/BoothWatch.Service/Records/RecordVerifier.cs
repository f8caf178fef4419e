using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Unicode;
using BoothWatch.Records;
using CsvHelper;
using CsvHelper.Configuration;

namespace BoothWatch.Service.Records;

/// <summary>Reckons the SHA-256 of a record in a file anew and compares it with the one that the file carries.</summary>
internal static class RecordVerifier
{
    private static readonly string[] Members = ["sha256", "canonicalization", "issued", "record"];

    // A name given twice has no one meaning (RFC 7493, 2.3).
    private static readonly JsonDocumentOptions Strict = new() { AllowDuplicateProperties = false };

    /// <summary>Checks the JSON of a record.</summary>
    public static RecordCheck Json(ReadOnlyMemory<byte> file)
    {
        try
        {
            return Document(Parsed(file));
        }
        catch (JsonException problem)
        {
            return RecordCheck.Altered($"it is not valid JSON any more: {problem.Message}");
        }
    }

    /// <summary>Checks a table with its metadata: the record in the metadata, then whether table and metadata are what that record gives.</summary>
    public static RecordCheck Csv(byte[] table, ReadOnlyMemory<byte> metadata)
    {
        try
        {
            JsonElement root = Parsed(metadata);
            if (root.ValueKind != JsonValueKind.Object
                || !root.TryGetProperty("notes", out JsonElement notes) || notes.ValueKind != JsonValueKind.Array || notes.GetArrayLength() != 1
                || !root.TryGetProperty("url", out JsonElement url) || url.ValueKind != JsonValueKind.String)
            {
                return RecordCheck.Altered("the metadata hold no url, or not one note with a record");
            }

            RecordCheck check = Document(notes[0]);
            if (!check.Matches)
            {
                return check;
            }

            RecordDocument document = RecordDocument.Read(notes[0]);
            byte[] wanted = RecordCsv.Write(document);
            if (!table.AsSpan().SequenceEqual(wanted))
            {
                return check with { Matches = false, Finding = $"the table is not the one of the record in its metadata: {Difference(table, wanted)}" };
            }

            using JsonDocument built = JsonDocument.Parse(CsvMetadata.Write(document, url.GetString()!));
            return CanonicalJson.Bytes(built.RootElement).AsSpan().SequenceEqual(CanonicalJson.Bytes(root))
                ? check
                : check with { Matches = false, Finding = "the metadata describe the table otherwise than the record does: columns, units or titles were altered" };
        }
        catch (JsonException problem)
        {
            return RecordCheck.Altered($"the metadata are not valid any more: {problem.Message}");
        }
        catch (FormatException problem)
        {
            return RecordCheck.Altered($"the metadata have no canonical form: {problem.Message}");
        }
    }

    private static JsonElement Parsed(ReadOnlyMemory<byte> json)
    {
        if (!Utf8.IsValid(json.Span))
        {
            throw new JsonException("it is not UTF-8");
        }

        try
        {
            using JsonDocument document = JsonDocument.Parse(json, Strict);
            return document.RootElement.Clone();
        }
        catch (InvalidOperationException notUnicode)
        {
            throw new JsonException("a name in it is no valid Unicode", notUnicode);
        }
    }

    private static RecordCheck Document(JsonElement document)
    {
        if (document.ValueKind != JsonValueKind.Object
            || document.EnumerateObject().Count() != Members.Length
            || !Members.All(name => document.TryGetProperty(name, out _))
            || document.GetProperty("sha256").ValueKind != JsonValueKind.String)
        {
            return RecordCheck.Altered($"it is no record of BoothWatch: it must hold {string.Join(", ", Members)} and nothing else");
        }

        if (!document.GetProperty("canonicalization").ValueEquals(RecordDocument.Form))
        {
            return RecordCheck.Altered($"its canonical form is not {RecordDocument.Form}");
        }

        try
        {
            string claimed = document.GetProperty("sha256").GetString()!;
            string reckoned = RecordDocument.Hash(document.GetProperty("record"));
            return reckoned == claimed
                ? Known(document, reckoned)
                : new RecordCheck(false, document, reckoned, $"its data was altered: it has SHA-256 {reckoned}, and the file says {claimed}");
        }
        catch (FormatException problem)
        {
            return RecordCheck.Altered($"its data has no canonical form: {problem.Message}");
        }
    }

    private static RecordCheck Known(JsonElement document, string sha256) =>
        document.GetProperty("record") is { ValueKind: JsonValueKind.Object } record && record.TryGetProperty("format", out JsonElement format)
            && format.ValueKind == JsonValueKind.Number && format.TryGetInt32(out int version) && version == EnvironmentRecord.PresentFormat
            ? new RecordCheck(true, document, sha256, "the data has the SHA-256 that the file carries")
            : new RecordCheck(false, document, sha256, $"its data is of a layout that this program does not know; it knows {EnvironmentRecord.PresentFormat}");

    /// <summary>The first cell that differs, in words.</summary>
    private static string Difference(byte[] table, byte[] wanted)
    {
        List<string[]> found = Rows(table);
        List<string[]> rows = Rows(wanted);
        if (found.Count != rows.Count)
        {
            return string.Create(CultureInfo.InvariantCulture, $"it has {found.Count - 1} rows, the record {rows.Count - 1}");
        }

        for (int row = 0; row < rows.Count; row++)
        {
            for (int column = 0; column < Math.Max(rows[row].Length, found[row].Length); column++)
            {
                string was = column < rows[row].Length ? rows[row][column] : "no cell";
                string isNow = column < found[row].Length ? found[row][column] : "no cell";
                if (was != isNow)
                {
                    string name = column < rows[0].Length ? rows[0][column] : $"column {column + 1}";
                    return string.Create(CultureInfo.InvariantCulture, $"row {row}, {name}: the file says '{isNow}', the record '{was}'");
                }
            }
        }

        return "its cells are the same, but quotes, line ends or encoding were changed, as a spreadsheet does on saving";
    }

    private static List<string[]> Rows(byte[] table)
    {
        using StringReader text = new(Encoding.UTF8.GetString(table));
        using CsvParser parser = new(text, new CsvConfiguration(CultureInfo.InvariantCulture) { BadDataFound = null });
        List<string[]> rows = [];
        while (parser.Read())
        {
            rows.Add(parser.Record!);
        }

        return rows;
    }
}
