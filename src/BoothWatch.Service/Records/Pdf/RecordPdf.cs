using System.Globalization;
using BoothWatch.Records;
using BoothWatch.Service.Page;
using PdfSharp;
using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace BoothWatch.Service.Records.Pdf;

/// <summary>Writes a record as a PDF for people: vectors and embedded fonts, the JSON of the record attached.</summary>
/// <param name="text">How figures and times are written.</param>
/// <param name="options">Paper and heading.</param>
internal sealed class RecordPdf(RecordText text, RecordOptions options)
{
    /// <summary>The media type.</summary>
    public const string MediaType = "application/pdf";

    /// <summary>Name of the attached JSON.</summary>
    public const string AttachmentName = "record.json";

    private const double BodySize = 8.5;
    private const double TitleSize = 20;
    private const double LongTitleSize = 15;
    private const double FiguresHeight = 60;

    // The drawing library keeps fonts in shared caches; one document at a time. Requests come one at a time already, so none of them waits here.
    private static readonly Lock Drawing = new();

    /// <summary>The document.</summary>
    /// <param name="document">The record.</param>
    /// <param name="paper">One of <see cref="RecordPaper"/>; null: as in the settings.</param>
    public byte[] Write(RecordDocument document, string? paper = null)
    {
        ArgumentNullException.ThrowIfNull(document);
        lock (Drawing)
        {
            return Draw(document, RecordPaper.Find(paper ?? options.Paper) ?? RecordPaper.A4);
        }
    }

    private byte[] Draw(RecordDocument document, string paper)
    {
        using PdfDocument pdf = new();
        Describe(pdf, document);
        using PdfSheet sheet = new(pdf, paper == RecordPaper.Letter ? PageSize.Letter : PageSize.A4);
        EnvironmentRecord record = document.Record;
        Head(sheet, record);
        Figures(sheet, record);
        if (record.Coats.Count > 0)
        {
            sheet.Heading("Coats and their air", 90);
            new CoatTable(sheet, text).Write(record.Coats);
        }

        if (record.Air.Count > 0)
        {
            sheet.Heading("The air around the coats", AirChart.HeightPt);
            foreach (AirStretch stretch in record.Air)
            {
                new AirChart(sheet, text).Draw(stretch, record.Coats);
            }
        }

        Overrides(sheet, record);
        Changes(sheet, record);
        Sensors(sheet, record);
        Bullets(sheet, "How far this can be trusted", record.Uncertainty);
        About(sheet, document);
        sheet.Finish((graphics, page, pages) => Foot(sheet, graphics, document, page, pages));
        using MemoryStream json = new(document.Json());
        pdf.AddEmbeddedFile(AttachmentName, json);
        using MemoryStream bytes = new();
        pdf.Save(bytes, closeStream: false);
        return bytes.ToArray();
    }

    private static void Describe(PdfDocument pdf, RecordDocument document)
    {
        pdf.Info.Title = $"Environment record: {document.Record.Job.Details.Piece}";
        pdf.Info.Author = document.Record.Shop;
        pdf.Info.Subject = $"Job {document.Record.Job.Id}, booth {document.Record.Booth}. {document.Record.Caution}";
        pdf.Info.Keywords = "sha256:" + document.Sha256;
        pdf.Info.Creator = document.Issued.Software;
        pdf.Info.CreationDate = document.Issued.At.UtcDateTime;
        pdf.Language = "en";
    }

    private void Head(PdfSheet sheet, EnvironmentRecord record)
    {
        XGraphics graphics = sheet.Graphics;
        XFont small = PdfFonts.Bold(9);
        string place = options.ShowShop ? $"{record.Shop} · booth {record.Booth}" : $"booth {record.Booth}";
        const string kind = "Environment record";
        double kindWidth = graphics.MeasureString(kind, small).Width;
        graphics.DrawString(PdfLines.Cut(graphics, place, small, sheet.Width - kindWidth - 20), small, PdfInk.Text, sheet.Left, sheet.Y + 9);
        graphics.DrawString(kind, small, PdfInk.Quiet, sheet.Right - kindWidth, sheet.Y + 9);
        sheet.Y += 16;
        graphics.DrawLine(new XPen(PdfInk.Dark, 1.2), sheet.Left, sheet.Y, sheet.Right, sheet.Y);
        sheet.Y += 10;
        string piece = record.Job.Details.Piece;
        sheet.Paragraph(piece, PdfFonts.Bold(graphics.MeasureString(piece, PdfFonts.Bold(TitleSize)).Width <= sheet.Width ? TitleSize : LongTitleSize), PdfInk.Text);
        RecordJob job = record.Job;
        string[] facts =
        [
            job.Details.Finish,
            $"job {job.Id}",
            $"begun {text.Moment(job.Started)}",
            job.Finished is { } finished ? $"finished {text.Moment(finished)}" : "still running: this record may change",
        ];
        sheet.Y += 2;
        sheet.Paragraph(string.Join(" · ", facts.Where(fact => fact.Length > 0)), PdfFonts.Regular(9), PdfInk.Text);
        if (job.Details.Note.Length > 0)
        {
            sheet.Paragraph(job.Details.Note, PdfFonts.Regular(9), PdfInk.Quiet);
        }

        if (record.IsDemo)
        {
            sheet.Y += 6;
            XPen dashed = new(PdfInk.Dark, 1);
            dashed.DashPattern = [4, 3];
            sheet.Graphics.DrawRectangle(dashed, sheet.Left, sheet.Y, sheet.Width, 20);
            sheet.Graphics.DrawString("DEMO. Invented data or emulated sensors: nobody sprayed this piece in this air.", PdfFonts.Bold(9), PdfInk.Text, sheet.Left + 8, sheet.Y + 13);
            sheet.Y += 20;
        }
    }

    /// <summary>What a reader wants first: how many coats, in what air, how near to blushing, and whether anybody overruled the verdict.</summary>
    private void Figures(PdfSheet sheet, EnvironmentRecord record)
    {
        double[] Known(Func<RecordCoat, double?> pick) => [.. record.Coats.Select(pick).OfType<double>()];
        string Range(double[] values, Func<double?, string> write) => values.Length == 0 ? DegreeText.Unknown
            : write(values.Min()) == write(values.Max()) ? write(values.Min()) : $"{write(values.Min())} to {write(values.Max())}";
        double[] air = Known(coat => coat.AtStart?.AirTemperatureC);
        double[] humidity = Known(coat => coat.AtStart?.RelativeHumidityPct);
        double[] dew = Known(coat => coat.AtStart?.DewPointC);
        double[] margins = Known(coat => coat.AtStart?.BlushMarginC);
        int overrides = record.Coats.Count(coat => coat.Override is not null);
        (string Title, string Value, string Below)[] figures =
        [
            ("Coats", record.Coats.Count.ToString(CultureInfo.InvariantCulture), record.Coats.Count == 0 ? "none yet" : text.Days(record.Coats[0].Details.Start, record.Coats[^1].Details.Start)),
            ("Air at their start", $"{Range(air, text.Temperature)} {text.Degrees.Unit}", $"dew point {Range(dew, text.Temperature)} {text.Degrees.Unit}"),
            ("Humidity", $"{Range(humidity, RecordText.Percent)} %", "relative, at their start"),
            ("Least blush margin", margins.Length == 0 ? "not known" : $"{text.Difference(margins.Min())} {text.Degrees.Unit}", "model: above 0 it holds\n± in the table"),
            ("Begun on “spray”", $"{record.Coats.Count - overrides} of {record.Coats.Count}", overrides == 0 ? "no override" : "the others: see Overrides"),
        ];
        sheet.Y += 12;
        double width = sheet.Width / figures.Length;
        sheet.Graphics.DrawRectangle(new XSolidBrush(PdfInk.Pale), sheet.Left, sheet.Y, sheet.Width, FiguresHeight);
        for (int i = 0; i < figures.Length; i++)
        {
            double x = sheet.Left + (i * width) + 8;
            sheet.Graphics.DrawString(figures[i].Title, PdfFonts.Regular(7.5), PdfInk.Quiet, x, sheet.Y + 14);
            sheet.Graphics.DrawString(PdfLines.Cut(sheet.Graphics, figures[i].Value, PdfFonts.Bold(11.5), width - 10), PdfFonts.Bold(11.5), PdfInk.Text, x, sheet.Y + 29);
            double y = sheet.Y + 42;
            foreach (string line in figures[i].Below.Split('\n'))
            {
                sheet.Graphics.DrawString(PdfLines.Cut(sheet.Graphics, line, PdfFonts.Regular(7.5), width - 10), PdfFonts.Regular(7.5), PdfInk.Quiet, x, y);
                y += 10;
            }
        }

        sheet.Y += FiguresHeight;
    }

    private static void Overrides(PdfSheet sheet, EnvironmentRecord record)
    {
        RecordCoat[] overridden = [.. record.Coats.Where(coat => coat.Override is not null)];
        if (record.Coats.Count == 0)
        {
            return;
        }

        if (overridden.Length == 0)
        {
            Bullets(sheet, "Overrides", ["None: every coat was begun while the verdict was spray."]);
            return;
        }

        Bullets(sheet, "Overrides", overridden.Select(coat =>
            $"Coat {coat.Place}: {coat.Override!.Finding}{(coat.Override.Reasons.Count > 0 ? $" ({string.Join("; ", coat.Override.Reasons)})" : "")}."));
    }

    private void Changes(PdfSheet sheet, EnvironmentRecord record)
    {
        string[] changes =
        [
            .. record.Job.Corrections.Select(correction => $"The job was corrected {text.Moment(correction.At)}{(correction.Why.Length > 0 ? $": {correction.Why}" : "")}."),
            .. record.Job.Original is { } original ? [$"As first entered: {original.Piece}{(original.Finish.Length > 0 ? $", {original.Finish}" : "")}{(original.Note.Length > 0 ? $", {original.Note}" : "")}."] : Array.Empty<string>(),
            .. record.Coats.Where(coat => coat.Corrections.Count > 0).Select(coat => $"Coat {coat.Place} was corrected {(coat.Corrections.Count == 1 ? "once" : $"{coat.Corrections.Count} times")}; the original stands below it in the table."),
            .. record.TakenBack.Select(coat => $"A coat was marked {text.Moment(coat.MarkedAt)} and taken back: {text.Coat(coat.Details)}."),
        ];
        if (changes.Length > 0)
        {
            Bullets(sheet, "Corrected and taken back", changes);
        }
    }

    private void Sensors(PdfSheet sheet, EnvironmentRecord record) => Bullets(sheet, "Sensors, as configured when this was written out", record.Sensors.Count == 0
        ? ["None is configured."]
        : record.Sensors.Select(sensor =>
            $"{sensor.Name}: {sensor.Description}. {(sensor.LastCheck is { } check ? $"Last check {text.Moment(check.At)}: {check.Finding}." : "No check on record.")}"));

    private void About(PdfSheet sheet, RecordDocument document)
    {
        XFont font = PdfFonts.Regular(BodySize);
        sheet.Heading("SHA-256 of the data", 70);
        sheet.Paragraph(string.Join(' ', document.Sha256.Chunk(16).Select(digits => new string(digits))), PdfFonts.Bold(9), PdfInk.Text);
        sheet.Gap(2);
        sheet.Paragraph(
            "It is taken over the data of this record, attached to this file as " + AttachmentName + ", in the canonical form of RFC 8785; the CSV and the JSON of the same record carry the same digits. "
            + "They show a later change only to somebody who kept a copy of them elsewhere: whoever changes the data can also reckon them anew. There is no signature.",
            font,
            PdfInk.Quiet);
        sheet.Gap(2);
        sheet.Paragraph($"Written out {text.Moment(document.Issued.At)} by {document.Issued.Software}. Temperatures in {text.Degrees.Unit}.", font, PdfInk.Quiet);
    }

    private static void Bullets(PdfSheet sheet, string heading, params IEnumerable<string> lines)
    {
        XFont font = PdfFonts.Regular(BodySize);
        sheet.Heading(heading, 24);
        foreach (string line in lines)
        {
            sheet.Need(Math.Min(3, PdfLines.Of(sheet.Graphics, line, font, sheet.Width - 10).Count) * PdfLines.Height(font));
            sheet.Graphics.DrawString("–", font, PdfInk.Quiet, sheet.Left, sheet.Y + PdfLines.Ascent(font));
            sheet.Paragraph(line, font, PdfInk.Text, 10);
            sheet.Gap(1.5);
        }
    }

    private static void Foot(PdfSheet sheet, XGraphics graphics, RecordDocument document, int page, int pages)
    {
        XFont font = PdfFonts.Regular(7);
        graphics.DrawLine(PdfInk.Rule, sheet.Left, sheet.FootY, sheet.Right, sheet.FootY);
        string number = $"page {page} of {pages}";
        double width = graphics.MeasureString(number, font).Width;
        graphics.DrawString(number, font, PdfInk.Quiet, sheet.Right - width, sheet.FootY + 11);
        string what = $"{(document.Record.IsDemo ? "DEMO · " : "")}job {document.Record.Job.Id} · SHA-256 {document.Sha256[..16]}… · {document.Record.Job.Details.Piece}";
        graphics.DrawString(PdfLines.Cut(graphics, what, font, sheet.Width - width - 20), font, PdfInk.Quiet, sheet.Left, sheet.FootY + 11);
        graphics.DrawString(document.Record.Caution, font, PdfInk.Quiet, sheet.Left, sheet.FootY + 21);
    }
}
