using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using BoothWatch.Jobs;
using BoothWatch.Records;
using BoothWatch.Service.Jobs;
using BoothWatch.Service.Page;
using BoothWatch.Service.Records;
using BoothWatch.Service.Records.Pdf;
using BoothWatch.Service.Tests.Jobs;
using BoothWatch.Verdicts;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.DocumentLayoutAnalysis.TextExtractor;

namespace BoothWatch.Service.Tests.Records;

/// <summary>The PDF as another program reads it.</summary>
public sealed class RecordPdfTests
{
    private static readonly TimeZoneInfo Shop = TimeZoneInfo.CreateCustomTimeZone("shop", TimeSpan.FromHours(2), "shop", "shop");

    [Theory]
    [InlineData(3)]
    [InlineData(14)]
    public void Pages_HoldEveryCoatWithItsFigures(int coats)
    {
        RecordDocument document = SampleRecord.Document(coats);
        using PdfDocument pdf = PdfDocument.Open(Write(document));
        string text = TextOf(pdf);
        Assert.Contains(SampleRecord.Piece, text, StringComparison.Ordinal);
        foreach (RecordCoat coat in document.Record.Coats)
        {
            Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"{coat.Place} {coat.Details.Kind.Word()}"), text, StringComparison.Ordinal);
            Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"{coat.AtStart!.DewPointC:0.0}"), text, StringComparison.Ordinal);
            Assert.Contains(coat.Details.Start.ToOffset(TimeSpan.FromHours(2)).ToString("HH:mm", CultureInfo.InvariantCulture), text, StringComparison.Ordinal);
        }

        foreach (RecordCoat coat in document.Record.Coats.Where(coat => coat.Override is not null))
        {
            Assert.Contains($"Coat {coat.Place}: {coat.Override!.Finding}", text, StringComparison.Ordinal);
        }

        Assert.Contains("UTC+02:00", text, StringComparison.Ordinal);
        Assert.Contains("Advice about the finish, no statement on safety", text, StringComparison.Ordinal);
        Assert.Contains("No check on record", text, StringComparison.Ordinal);
        Assert.DoesNotContain("no blush", text, StringComparison.Ordinal);
        Assert.Contains("model: above 0 it holds", text, StringComparison.Ordinal);
        Assert.Contains("± in the table", text, StringComparison.Ordinal);
        Assert.Contains("As first marked", text, StringComparison.Ordinal);
        Assert.Contains("taken back", text, StringComparison.Ordinal);
        Assert.Contains(document.Sha256[..16], text, StringComparison.Ordinal);
        for (int page = 1; page <= pdf.NumberOfPages; page++)
        {
            Assert.Contains($"page {page} of {pdf.NumberOfPages}", ContentOrderTextExtractor.GetText(pdf.GetPage(page)), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Text_WithUmlautsSignsAndDashes_HasAGlyphForEachLetter()
    {
        // Every letter that the record itself writes, and those of European names of pieces. Glyph 0 is the empty box of a font.
        const string letters = "ÄÖÜäöüßÉéèêñçøåłžőα °%µ–—−±·…“”„€&<>'\"/№";
        using PdfDocument pdf = PdfDocument.Open(Write(SampleRecord.Document(1, letters)));
        string text = TextOf(pdf).Replace('μ', 'µ');
        Assert.All(letters.Where(letter => letter != ' '), letter => Assert.Contains(letter, text));
        Assert.All(pdf.GetPages().SelectMany(page => page.Letters), letter => Assert.Contains("Inter", letter.FontName, StringComparison.Ordinal));
    }

    // The package is downloaded outside the lock file, so what is used of it is checked here: SHA-256 of the files of version 12.1.6.
    [Theory]
    [InlineData("Inter-Regular.ttf", "41ab0f707a2bfab8133ccdfcdab52282f5f79e5751f43a264805451c7bb95fb8")]
    [InlineData("Inter-SemiBold.ttf", "e8cbc2b88bc4268237ff5e251776d3c54edcb14e015a9e66e4883bde4b55f13f")]
    public void Font_IsTheOneThatWasReviewedWithItsLicence(string name, string sha256)
    {
        byte[] font = PackagedFont.Read(name);
        Assert.Equal(sha256, Convert.ToHexStringLower(SHA256.HashData(font)));
        Assert.True(font.AsSpan().IndexOf(Encoding.BigEndianUnicode.GetBytes("Open Font License")) > 0);
    }

    [Fact]
    public void Font_ThatIsNotInThePackage_IsNamed() =>
        Assert.Contains("Inter-Nothing.ttf", Assert.Throws<InvalidOperationException>(() => PackagedFont.Read("Inter-Nothing.ttf")).Message, StringComparison.Ordinal);

    [Fact]
    public void Attachment_IsTheJsonOfTheRecord()
    {
        RecordDocument document = SampleRecord.Document(3);
        byte[] pdf = Write(document);
        Assert.Equal(document.Json(), PdfAttachment.Read(pdf));
        using PdfDocument read = PdfDocument.Open(pdf);
        Assert.True(read.Advanced.TryGetEmbeddedFiles(out IReadOnlyList<EmbeddedFile>? files));
        Assert.Equal("record.json", Assert.Single(files!).Name);
        Assert.Equal("sha256:" + document.Sha256, read.Information.Keywords);
    }

    [Fact]
    public void Paper_IsTheOneAskedForElseThatOfTheSettings()
    {
        // ISO 216: A4 is 210 mm by 297 mm; Letter is 8.5 inch by 11 inch; 72 pt are an inch.
        RecordDocument document = SampleRecord.Document(3);
        Assert.Equal((595, 842), Size(Write(document)));
        Assert.Equal((612, 792), Size(Write(document, new RecordOptions { Paper = "Letter" })));
        Assert.Equal((612, 792), Size(Writer(new RecordOptions()).Write(document, "Letter")));
    }

    [Fact]
    public void Settings_ForShopAndUnit_AreFollowed()
    {
        RecordDocument document = SampleRecord.Document(3);
        RecordPdf writer = new(new RecordText(new DegreeText(TemperatureUnit.Fahrenheit), Shop), new RecordOptions { ShowShop = false });
        using PdfDocument pdf = PdfDocument.Open(writer.Write(document));
        string text = TextOf(pdf);
        Assert.DoesNotContain("Harbour Lane", text, StringComparison.Ordinal);
        Assert.Contains("°F", text, StringComparison.Ordinal);

        // °F = °C × 9/5 + 32 (NIST SP 811, B.8).
        Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"{(document.Record.Coats[0].AtStart!.AirTemperatureC * 9 / 5) + 32:0.0}"), text, StringComparison.Ordinal);
    }

    [Fact]
    public void Record_WithoutCoatsOrWithAVeryLongName_IsWritten()
    {
        using PdfDocument empty = PdfDocument.Open(Write(SampleRecord.Document(0)));
        Assert.Contains("none yet", TextOf(empty), StringComparison.Ordinal);
        using PdfDocument longName = PdfDocument.Open(Write(SampleRecord.Document(2, string.Concat(Enumerable.Repeat("Wandschrankseitentür", 6)))));
        Assert.All(longName.GetPages().SelectMany(page => page.Letters), letter => Assert.InRange(letter.BoundingBox.Right, 0, 595 - 40));
    }

    [Fact]
    public void Coat_OfWhichNothingIsKnown_IsSaidSo()
    {
        Job job = Job.From(
        [
            new JobEntry(1, 5, TestJob.Day, "page", new JobStarted(TestJob.Details)),
            new JobEntry(2, 5, TestJob.Day.AddDays(2), "page", new CoatMarked(1, TestJob.Coat(10), null)),
        ]);
        EnvironmentRecord record = RecordComposer.Compose(new RecordInputs
        {
            Job = job,
            Shop = "Harbour Lane",
            Booth = "corner",
            IsDemo = false,
            AirOf = coat => new CoatAir { From = coat.Details.Start, To = coat.Details.Start, Count = 0, FromRows = false },
            ReasonsAt = _ => [],
            Air = [.. RecordSpan.Of(job, TestJob.Day.AddDays(2)).Select(span => new AirStretch(span.From, span.To, 300, []))],
            Sensors = [],
        });
        RecordDocument document = RecordDocument.Of(record, SampleRecord.Issue);
        RecordSchemaTests.Valid(document.Json());
        using PdfDocument pdf = PdfDocument.Open(Write(document));
        string text = TextOf(pdf);
        Assert.Contains("still running: this record may change", text, StringComparison.Ordinal);
        Assert.Contains("No verdict: no verdict is on record for its start", text, StringComparison.Ordinal);
        Assert.Contains("the journal has no air for this time", text, StringComparison.Ordinal);
        Assert.Contains("Coat 1: no end was marked; 10 minutes of spraying are taken", text, StringComparison.Ordinal);
        Assert.Contains("written down later than sprayed", text, StringComparison.Ordinal);
        Assert.Contains("not known", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Demo_IsSaidOnEveryPage()
    {
        EnvironmentRecord demo = SampleRecord.Record(14, SampleRecord.Piece, isDemo: true);
        using PdfDocument pdf = PdfDocument.Open(Write(RecordDocument.Of(demo, SampleRecord.Issue)));
        Assert.InRange(pdf.NumberOfPages, 3, 8);
        Assert.All(pdf.GetPages(), page => Assert.Contains("DEMO", ContentOrderTextExtractor.GetText(page), StringComparison.Ordinal));
    }

    internal static byte[] Write(RecordDocument document, RecordOptions? options = null) => Writer(options ?? new RecordOptions()).Write(document);

    private static RecordPdf Writer(RecordOptions options) => new(new RecordText(new DegreeText(TemperatureUnit.Celsius), Shop), options);

    private static string TextOf(PdfDocument pdf) => string.Join(' ', string.Join(' ', pdf.GetPages().Select(page => ContentOrderTextExtractor.GetText(page)))
        .Replace('\u00a0', ' ').Split(null as char[], StringSplitOptions.RemoveEmptyEntries));

    private static (int Width, int Height) Size(byte[] pdf)
    {
        using PdfDocument read = PdfDocument.Open(pdf);
        UglyToad.PdfPig.Content.Page page = read.GetPage(1);
        return ((int)Math.Round(page.Width), (int)Math.Round(page.Height));
    }
}
