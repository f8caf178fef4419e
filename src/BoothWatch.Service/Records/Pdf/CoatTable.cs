using BoothWatch.Records;
using BoothWatch.Service.Jobs;
using BoothWatch.Service.Page;
using BoothWatch.Verdicts;
using PdfSharp.Drawing;

namespace BoothWatch.Service.Records.Pdf;

/// <summary>The coats in the PDF: a line of figures for each, and below it what was in the cup, the air while spraying and what was said or corrected.</summary>
internal sealed class CoatTable(PdfSheet sheet, RecordText text)
{
    private const double Size = 8.5;
    private const double SmallSize = 7.5;
    private const double RowPt = 14;
    private const double Indent = 20;

    private sealed record Column(string Title, string? Unit, double Share, bool Right, Func<RecordCoat, string> Value);

    private Column[] Columns =>
    [
        new("Coat", null, 0.125, false, coat => $"{coat.Place}  {coat.Details.Kind.Word()}"),
        new("Sprayed", null, 0.12, false, coat => $"{text.Clock(coat.Details.Start)}–{(coat.Details.Stop is { } stop ? text.Clock(stop) : "")}"),
        new("Air", text.Degrees.Unit, 0.08, true, coat => text.Temperature(coat.AtStart?.AirTemperatureC)),
        new("Humidity", "%", 0.09, true, coat => RecordText.Percent(coat.AtStart?.RelativeHumidityPct)),
        new("Dew point", text.Degrees.Unit, 0.1, true, coat => text.Temperature(coat.AtStart?.DewPointC)),
        new("Piece", text.Degrees.Unit, 0.08, true, coat => text.Temperature(coat.AtStart?.PieceTemperatureC)),
        new("Blush margin", text.Degrees.Unit, 0.13, true, coat => text.Margin(coat.AtStart)),
        new("   Verdict at start", null, 0.155, false, _ => ""),
        new("Outcome", null, 0.12, false, coat => coat.Outcome?.Word().Replace('-', ' ') ?? "not said"),
    ];

    /// <summary>Writes the table, a group a day.</summary>
    public void Write(IReadOnlyList<RecordCoat> coats)
    {
        Header();
        DateOnly? day = null;
        foreach (RecordCoat coat in coats)
        {
            bool newDay = day != text.DateOf(coat.Details.Start);
            if (sheet.Need(HeightOf(coat) + (newDay ? 20 : 0)))
            {
                Header();
                newDay = true;
            }

            if (newDay)
            {
                day = text.DateOf(coat.Details.Start);
                sheet.Y += 5;
                sheet.Graphics.DrawString(text.Day(coat.Details.Start), PdfFonts.Bold(SmallSize), PdfInk.Quiet, sheet.Left, sheet.Y + PdfLines.Ascent(PdfFonts.Bold(SmallSize)));
                sheet.Y += 13;
            }

            Row(coat);
        }
    }

    private void Header()
    {
        XFont font = PdfFonts.Bold(SmallSize);
        EachColumn((column, x, width) =>
        {
            Cell(column.Title, font, PdfInk.Text, x, width, sheet.Y, column.Right);
            if (column.Unit is { } unit)
            {
                Cell(unit, PdfFonts.Regular(SmallSize), PdfInk.Quiet, x, width, sheet.Y + 10, column.Right);
            }
        });
        sheet.Y += 23;
        sheet.Graphics.DrawLine(new XPen(PdfInk.Dark, 0.8), sheet.Left, sheet.Y, sheet.Right, sheet.Y);
    }

    private void Row(RecordCoat coat)
    {
        sheet.Y += 4;
        double y = sheet.Y;
        EachColumn((column, x, width) =>
        {
            Cell(column.Value(coat), column.Title is "Coat" ? PdfFonts.Bold(Size) : PdfFonts.Regular(Size), PdfInk.Text, x, width, y, column.Right);
            if (column.Title.EndsWith("Verdict at start", StringComparison.Ordinal))
            {
                Verdict(coat.AtStart?.Verdict, x + 9, y);
            }
        });
        sheet.Y += RowPt;
        foreach ((string words, bool strong) in Remarks(coat))
        {
            sheet.Paragraph(words, strong ? PdfFonts.Bold(SmallSize) : PdfFonts.Regular(SmallSize), strong ? PdfInk.Text : PdfInk.Quiet, Indent);
        }

        sheet.Y += 4;
        sheet.Rule();
    }

    private void Verdict(Verdict? verdict, double x, double y)
    {
        if (verdict is { } known)
        {
            VerdictMark.Draw(sheet.Graphics, known, x, y + 0.5, 9);
        }

        sheet.Graphics.DrawString(verdict?.Word() ?? "not known", PdfFonts.Regular(Size), PdfInk.Text, x + (verdict is null ? 0 : 13), y + PdfLines.Ascent(PdfFonts.Regular(Size)));
    }

    private IEnumerable<(string Words, bool Strong)> Remarks(RecordCoat coat)
    {
        string recommended = coat.AtStart?.RecommendedRetarderPct is { } pct && pct != coat.Details.Mix.RetarderPct ? $" ({DegreeText.Percent(pct)} recommended)" : "";
        yield return ($"{RecordText.Mix(coat.Details.Mix)}{recommended}; {coat.Details.WetFilmUm:0.#}\u00a0µm wet on {coat.Details.Substrate}; air speed {coat.Details.AirSpeedMPerS:0.##}\u00a0m/s", false);
        if (coat.WhileSprayed is { } air)
        {
            yield return ($"While spraying: air {RecordText.Least(air.TemperatureC, text.Temperature)} {text.Degrees.Unit}, humidity {RecordText.Least(air.RelativeHumidityPct, RecordText.Percent)} %, "
                + $"dew point {RecordText.Least(air.DewPointC, text.Temperature)} {text.Degrees.Unit}, piece {RecordText.Least(air.PieceTemperatureC, text.Temperature)} {text.Degrees.Unit}", false);
            if (air.WorstVerdict < coat.AtStart?.Verdict)
            {
                yield return ($"The verdict turned to {air.WorstVerdict?.Word()} while it was sprayed", true);
            }
        }

        if (coat.Override is { } overridden)
        {
            yield return ($"{(overridden.Verdict is null ? "No verdict" : "Override")}: {overridden.Finding}", true);
        }

        if (coat.OutcomeNote.Length > 0)
        {
            yield return ($"Noted: {coat.OutcomeNote}", false);
        }

        if (coat.Original is { } original)
        {
            foreach (CoatCorrection correction in coat.Corrections)
            {
                yield return ($"Corrected {text.Moment(correction.At)}{(correction.Why.Length > 0 ? $": {correction.Why}" : "")}", false);
            }

            yield return ($"As first marked: {text.Coat(original)}", false);
        }
    }

    private double HeightOf(RecordCoat coat) => RowPt + 8 + Remarks(coat).Sum(remark =>
    {
        XFont font = remark.Strong ? PdfFonts.Bold(SmallSize) : PdfFonts.Regular(SmallSize);
        return PdfLines.Of(sheet.Graphics, remark.Words, font, sheet.Width - Indent).Count * PdfLines.Height(font);
    });

    private void EachColumn(Action<Column, double, double> draw)
    {
        double x = sheet.Left;
        foreach (Column column in Columns)
        {
            double width = column.Share * sheet.Width;
            draw(column, x, width);
            x += width;
        }
    }

    private void Cell(string words, XFont font, XBrush brush, double x, double width, double y, bool right)
    {
        string cut = PdfLines.Cut(sheet.Graphics, words, font, width - 2);
        double shift = right ? width - sheet.Graphics.MeasureString(cut, font).Width : 0;
        sheet.Graphics.DrawString(cut, font, brush, x + shift, y + PdfLines.Ascent(font));
    }
}
