using BoothWatch.Service.Records.Pdf;

namespace BoothWatch.Service.Records;

/// <summary>Checks a record in a file, whatever its form.</summary>
internal static class RecordFile
{
    /// <summary>Reads and checks a file; its form is told by its content.</summary>
    /// <param name="path">The file.</param>
    /// <param name="metadata">Metadata of a table; null: the file beside it.</param>
    /// <exception cref="IOException">It, or its metadata, cannot be read.</exception>
    public static async Task<RecordCheck> CheckAsync(string path, string? metadata = null)
    {
        byte[] bytes = await File.ReadAllBytesAsync(path);
        return bytes.AsSpan().StartsWith("%PDF-"u8) ? Pdf(bytes)
            : bytes.AsSpan().TrimStart(" \t\r\n"u8).StartsWith("{"u8) ? RecordVerifier.Json(bytes)
            : RecordVerifier.Csv(bytes, await File.ReadAllBytesAsync(metadata ?? path + CsvMetadata.Suffix));
    }

    private static RecordCheck Pdf(byte[] bytes)
    {
        try
        {
            RecordCheck check = PdfAttachment.Read(bytes) is { } json
                ? RecordVerifier.Json(json)
                : RecordCheck.Altered($"no {RecordPdf.AttachmentName} is attached to it");
            return check.Matches
                ? check with { Finding = "the attached data has the SHA-256 that it carries; the pages themselves are not checked: compare the digits printed on the last one, or write the pages anew from the attached data with record export" }
                : check;
        }
        catch (InvalidDataException problem)
        {
            return RecordCheck.Altered($"it is no PDF that can be read any more: {problem.Message}");
        }
    }
}
