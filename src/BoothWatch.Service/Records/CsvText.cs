namespace BoothWatch.Service.Records;

/// <summary>Keeps text that people typed from being run as a formula by a spreadsheet that opens the CSV.</summary>
/// <remarks>Source: OWASP, CSV Injection: cells that begin with = + - @, a tabulator or a line break, and the full-width forms of the signs.</remarks>
public static class CsvText
{
    private const string Dangerous = "=+-@\t\r\n＝＋－＠";

    /// <summary>The text, with an apostrophe before it where a spreadsheet might take it for a formula.</summary>
    public static string Guard(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Length > 0 && Dangerous.Contains(text[0], StringComparison.Ordinal) ? "'" + text : text;
    }
}
