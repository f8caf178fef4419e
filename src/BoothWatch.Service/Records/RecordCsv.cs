using System.Globalization;
using System.Text;
using BoothWatch.Records;
using CsvHelper;
using CsvHelper.Configuration;

namespace BoothWatch.Service.Records;

/// <summary>Writes the coats of a record as CSV after RFC 4180: one row a coat, CR LF, UTF-8 without a byte order mark.</summary>
public static class RecordCsv
{
    /// <summary>The media type.</summary>
    public const string MediaType = "text/csv; charset=utf-8; header=present";

    /// <summary>The table. The same record gives the same bytes.</summary>
    public static byte[] Write(RecordDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        using StringWriter text = new(CultureInfo.InvariantCulture);
        using (CsvWriter csv = new(text, Rfc4180))
        {
            foreach (RecordColumn column in RecordColumns.All)
            {
                csv.WriteField(column.Name);
            }

            csv.NextRecord();
            foreach (RecordCoat coat in document.Record.Coats)
            {
                foreach (RecordColumn column in RecordColumns.All)
                {
                    csv.WriteField(Cell(column.Value(document, coat)));
                }

                csv.NextRecord();
            }
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }

    // By itself the library quotes a line break only where it is the one that ends a record.
    private static CsvConfiguration Rfc4180 => new(CultureInfo.InvariantCulture)
    {
        NewLine = "\r\n",
        ShouldQuote = cell => cell.Field is { Length: > 0 } text && (text.AsSpan().IndexOfAny(",\"\r\n") >= 0 || text[0] == ' ' || text[^1] == ' '),
    };

    // Only text can be a formula; a negative number stays a number.
    private static string? Cell(object? value) => value switch
    {
        null => null,
        string text => CsvText.Guard(text),
        bool truth => truth ? "true" : "false",
        long whole => whole.ToString(CultureInfo.InvariantCulture),
        double number => ((decimal)number).ToString(CultureInfo.InvariantCulture),
        DateTimeOffset time => time.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.FFF'Z'", CultureInfo.InvariantCulture),
        _ => throw new ArgumentOutOfRangeException(nameof(value), value, "a cell is text, a number, a truth or a time"),
    };
}
