using BoothWatch.Readings;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Outputs.Mqtt;

/// <summary>An assessment as one JSON document. docs/topics has its schema.</summary>
internal sealed record AssessmentDocument
{
    public required DateTime Time { get; init; }

    public required string Shop { get; init; }

    public required string Booth { get; init; }

    public required bool ClockProven { get; init; }

    public required Verdict Verdict { get; init; }

    public required IEnumerable<Line> Reasons { get; init; }

    public required AirFindings? Air { get; init; }

    public required FilmFindings? Film { get; init; }

    public required PieceWarming? Warming { get; init; }

    public required IEnumerable<Value> Readings { get; init; }

    public static AssessmentDocument Of(Assessment assessment, string shop, string booth, TemperatureUnit unit) => new()
    {
        Time = assessment.Time.UtcDateTime,
        Shop = shop,
        Booth = booth,
        ClockProven = assessment.Snapshot.ClockProven,
        Verdict = assessment.Verdict,
        Reasons = assessment.Reasons.Select(reason => new Line(reason.Rule, reason.Limit, reason.Finding, reason.Action)),
        Air = assessment.Air,
        Film = assessment.Film,
        Warming = assessment.Warming,
        Readings = assessment.Snapshot.Readings.Values.OrderBy(reading => reading.Quantity).Select(reading => new Value(
            reading.Quantity,
            reading.Sensor,
            reading.Value,
            QuantityUnit.Of(reading.Quantity),
            reading.StandardUncertainty,
            Math.Round(reading.Age.TotalSeconds, 1),
            reading.Quality,
            reading.Cause is { } cause ? new TemperatureText(unit).Of(cause) : null)),
    };

    internal sealed record Line(string Rule, Verdict Limit, string Finding, string Action);

    internal sealed record Value(
        Quantity Quantity, string Sensor, [property: System.Text.Json.Serialization.JsonPropertyName("value")] double? Amount, string Unit, double StandardUncertainty, double AgeS, ReadingQuality Quality, string? Cause);
}
