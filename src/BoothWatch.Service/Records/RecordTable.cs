using System.Globalization;
using System.Text;
using BoothWatch.Records;
using BoothWatch.Service.Jobs;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Records;

/// <summary>Writes a record as plain text for a terminal.</summary>
/// <param name="text">How to write figures and times.</param>
internal sealed class RecordTable(RecordText text)
{
    /// <summary>The text, with a line end.</summary>
    public string Write(RecordDocument document)
    {
        EnvironmentRecord record = document.Record;
        StringBuilder lines = new();
        void Line(string words) => lines.Append(words).Append('\n');
        RecordJob job = record.Job;
        Line($"{job.Details.Piece}{(job.Details.Finish.Length > 0 ? $", {job.Details.Finish}" : "")}");
        Line($"{record.Shop}, booth {record.Booth}; job {job.Id}, begun {text.Moment(job.Started)}, {(job.Finished is { } end ? $"finished {text.Moment(end)}" : "still running")}");
        if (record.IsDemo)
        {
            Line("DEMO: invented data or emulated sensors; nobody sprayed this piece in this air");
        }

        Line("");
        string unit = text.Degrees.Unit;
        Line(string.Create(CultureInfo.InvariantCulture, $"{"coat",-11}{"sprayed",-26}{"air " + unit,8}{"hum. %",8}{"dew " + unit,8}{"piece " + unit,10}{"margin " + unit,14}  {"verdict",-10}{"outcome"}"));
        foreach (RecordCoat coat in record.Coats)
        {
            string stop = coat.Details.Stop is { } known ? text.Clock(known) : "?";
            Line(string.Create(CultureInfo.InvariantCulture,
                $"{$"{coat.Place} {coat.Details.Kind.Word()}",-11}{$"{text.ShortDay(coat.Details.Start)} {text.Clock(coat.Details.Start)}-{stop}",-26}{text.Temperature(coat.AtStart?.AirTemperatureC),8}{RecordText.Percent(coat.AtStart?.RelativeHumidityPct),8}{text.Temperature(coat.AtStart?.DewPointC),8}{text.Temperature(coat.AtStart?.PieceTemperatureC),10}{text.Margin(coat.AtStart),14}  {coat.AtStart?.Verdict.Word() ?? "not known",-10}{coat.Outcome?.Word() ?? "not said"}"));
        }

        Line("");
        foreach (RecordCoat coat in record.Coats.Where(coat => coat.Override is not null))
        {
            Line($"override: coat {coat.Place}, {coat.Override!.Finding}");
        }

        foreach (RecordCoat coat in record.Coats.Where(coat => coat.Original is not null))
        {
            Line($"corrected: coat {coat.Place}; as first marked: {text.Coat(coat.Original!)}");
        }

        foreach (TakenBackCoat coat in record.TakenBack)
        {
            Line($"taken back: {text.Coat(coat.Details)}");
        }

        foreach (RecordSensor sensor in record.Sensors)
        {
            Line($"sensor: {sensor.Name}, {sensor.Description}; {(sensor.LastCheck is { } check ? $"last check {text.Moment(check.At)}: {check.Finding}" : "no check on record")}");
        }

        Line("");
        Line($"SHA-256 {document.Sha256}");
        Line(record.Caution);
        return lines.ToString();
    }
}
