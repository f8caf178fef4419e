using PdfSharp.Pdf;
using PdfSharp.Pdf.IO;

namespace BoothWatch.Service.Records.Pdf;

/// <summary>Reads the record that is attached to a PDF.</summary>
internal static class PdfAttachment
{
    /// <summary>The attached JSON; null when there is none of its name.</summary>
    /// <exception cref="InvalidDataException">It is no PDF that can be read.</exception>
    public static byte[]? Read(byte[] pdf)
    {
        try
        {
            return Attached(pdf);
        }
        catch (Exception problem) when (problem is not OutOfMemoryException)
        {
            // The library throws whatever comes up on a broken file, also plain Exception.
            throw new InvalidDataException(problem.Message, problem);
        }
    }

    private static byte[]? Attached(byte[] pdf)
    {
        using MemoryStream bytes = new(pdf);
        using PdfDocument document = PdfReader.Open(bytes, PdfDocumentOpenMode.Import);
        PdfArray? names = document.Internals.Catalog.Elements.GetDictionary("/Names")?.Elements.GetDictionary("/EmbeddedFiles")?.Elements.GetArray("/Names");
        for (int i = 0; names is not null && i + 1 < names.Elements.Count; i += 2)
        {
            if (names.Elements.GetString(i) == RecordPdf.AttachmentName)
            {
                return names.Elements.GetDictionary(i + 1)?.Elements.GetDictionary("/EF")?.Elements.GetDictionary("/F")?.Stream.UnfilteredValue;
            }
        }

        return null;
    }
}
