using System.Globalization;
using System.Text;
using System.Text.Json;
using BoothWatch.Records;
using BoothWatch.Service.Records;
using CsvHelper;
using CsvHelper.Configuration;

namespace BoothWatch.Service.Tests.Records;

/// <summary>The table read back by another reader and held against its own metadata.</summary>
public sealed class RecordCsvTests
{
    // The built-in datatypes of the "Metadata Vocabulary for Tabular Data" (W3C, 17 December 2015), 5.11.1, that the table uses, with the
    // lexical forms of XML Schema 1.1 part 2; dateTimeStamp has an offset always.
    private static readonly Dictionary<string, string> Lexical = new()
    {
        ["string"] = "(?s)^.*$",
        ["integer"] = "^-?[0-9]+$",
        ["decimal"] = @"^-?[0-9]+(\.[0-9]+)?$",
        ["boolean"] = "^(true|false)$",
        ["dateTimeStamp"] = @"^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(\.\d+)?Z$",
    };

    [Fact]
    public void Table_ReadBack_IsWhatItsMetadataSay()
    {
        RecordDocument document = SampleRecord.Document(14);
        JsonElement metadata = Metadata(document);
        JsonElement[] columns = [.. metadata.GetProperty("tableSchema").GetProperty("columns").EnumerateArray()];
        List<string[]> rows = Read(RecordCsv.Write(document));

        Assert.Equal("http://www.w3.org/ns/csvw", metadata.GetProperty("@context")[0].GetString());
        Assert.Equal("record.csv", metadata.GetProperty("url").GetString());
        Assert.Equal(columns.Select(column => column.GetProperty("name").GetString()), rows[0]);
        Assert.All(columns, column => Assert.Contains(column.GetProperty("name").GetString(), column.GetProperty("titles").EnumerateArray().Select(title => title.GetString())));
        Assert.Equal(15, rows.Count);
        foreach (string[] row in rows.Skip(1))
        {
            Assert.Equal(columns.Length, row.Length);
            for (int i = 0; i < columns.Length; i++)
            {
                if (row[i].Length == 0)
                {
                    Assert.False(columns[i].GetProperty("required").GetBoolean(), $"{rows[0][i]} is empty");
                }
                else
                {
                    Assert.Matches(Lexical[columns[i].GetProperty("datatype").GetString()!], row[i]);
                }
            }
        }

        string key = metadata.GetProperty("tableSchema").GetProperty("primaryKey").GetString()!;
        int keyAt = Array.IndexOf(rows[0], key);
        Assert.Equal(14, rows.Skip(1).Select(row => row[keyAt]).Distinct().Count());

        // Every figure with a unit in its name says the same unit to machines: UN/CEFACT Recommendation 20, from memory.
        foreach (JsonElement column in columns)
        {
            string name = column.GetProperty("name").GetString()!;
            string? code = column.TryGetProperty("schema:unitCode", out JsonElement unit) ? unit.GetString() : null;
            Assert.Equal(name.EndsWith("Pct", StringComparison.Ordinal) ? "P1" : name.EndsWith("Pa", StringComparison.Ordinal) ? "PAL" : name.EndsWith("Um", StringComparison.Ordinal) ? "4H"
                : name.EndsWith("MPerS", StringComparison.Ordinal) ? "MTS" : name.EndsWith('C') ? "CEL" : null, code);
        }
    }

    [Fact]
    public void Table_HoldsTheFiguresOfTheRecord()
    {
        RecordDocument document = SampleRecord.Document(4);
        List<string[]> rows = Read(RecordCsv.Write(document));
        for (int i = 0; i < 4; i++)
        {
            RecordCoat coat = document.Record.Coats[i];
            string Cell(string name) => rows[i + 1][Array.IndexOf(rows[0], name)];
            double Figure(string name) => double.Parse(Cell(name), CultureInfo.InvariantCulture);
            Assert.Equal(coat.AtStart!.DewPointC, Figure("dewPointC"));
            Assert.Equal(coat.AtStart.BlushMarginC, Figure("blushMarginC"));
            Assert.Equal(coat.WhileSprayed!.RelativeHumidityPct!.Max, Figure("mostHumidityPct"));
            Assert.Equal(coat.Details.Start, DateTimeOffset.Parse(Cell("start"), CultureInfo.InvariantCulture));
            Assert.Equal(document.Sha256, Cell("recordSha256"));
            Assert.Equal(coat.Override?.Finding ?? "", Cell("override"));
        }

        Assert.StartsWith("-", rows[4][Array.IndexOf(rows[0], "blushMarginC")], StringComparison.Ordinal);
    }

    [Fact]
    public void Table_OnTheWire_FollowsRfc4180()
    {
        // RFC 4180, 2: CR LF ends every record; the same number of fields in each.
        string text = Encoding.UTF8.GetString(RecordCsv.Write(SampleRecord.Document(3, "table, \"the long one\"")));
        Assert.EndsWith("\r\n", text, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', text.Replace("\r\n", "", StringComparison.Ordinal));
        Assert.Contains("\"table, \"\"the long one\"\"\"", text, StringComparison.Ordinal);
        Assert.NotEqual('\uFEFF', text[0]);
    }

    // OWASP, "CSV Injection": signs that make a cell a formula.
    [Theory]
    [InlineData("=HYPERLINK(\"http://example.invalid\",\"click\")")]
    [InlineData("+1+1")]
    [InlineData("-2+3")]
    [InlineData("@SUM(A1:A9)")]
    [InlineData("\t=1+1")]
    [InlineData("\r=1+1")]
    [InlineData("\n=1+1")]
    [InlineData("＝1+1")]
    public void Text_LikeAFormula_IsGuarded(string piece)
    {
        List<string[]> rows = Read(RecordCsv.Write(SampleRecord.Document(1, piece)));
        Assert.Equal("'" + piece, rows[1][Array.IndexOf(rows[0], "piece")]);
    }

    [Fact]
    public void Metadata_OfTextLikeAFormula_KeepItAsItWas() =>
        Assert.Equal("=1+1", Metadata(SampleRecord.Document(1, "=1+1")).GetProperty("notes")[0].GetProperty("record").GetProperty("job").GetProperty("details").GetProperty("piece").GetString());

    [Fact]
    public void Table_OfAJobWithoutCoats_IsItsHeader() => Assert.Single(Read(RecordCsv.Write(SampleRecord.Document(0))));

    private static JsonElement Metadata(RecordDocument document)
    {
        using JsonDocument json = JsonDocument.Parse(CsvMetadata.Write(document, "record.csv"));
        return json.RootElement.Clone();
    }

    private static List<string[]> Read(byte[] table)
    {
        using StreamReader text = new(new MemoryStream(table), new UTF8Encoding(false, throwOnInvalidBytes: true));
        using CsvParser parser = new(text, new CsvConfiguration(CultureInfo.InvariantCulture));
        List<string[]> rows = [];
        while (parser.Read())
        {
            rows.Add(parser.Record!);
        }

        return rows;
    }
}
