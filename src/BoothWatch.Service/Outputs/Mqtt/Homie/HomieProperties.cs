using BoothWatch.Readings;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Outputs.Mqtt.Homie;

/// <summary>Every property that the booth publishes, in the order in which it is published.</summary>
internal static class HomieProperties
{
    private const string Celsius = "°C";
    private const string Percent = "%";

    /// <summary>Node ids with their names, in order.</summary>
    public static readonly IReadOnlyList<(string Id, string Name)> Nodes =
    [
        ("verdict", "Verdict"),
        ("air", "Booth air"),
        ("film", "Coat in hand"),
        ("piece", "Piece"),
        ("exhaust", "Exhaust"),
        ("intake", "Intake or outdoor air"),
    ];

    public static readonly IReadOnlyList<HomieProperty> All =
    [
        new("verdict", "state", "May this coat be sprayed now", "enum", a => a.Verdict.Word(), Format: "wait,slow down,spray"),
        new("verdict", "reason", "Most limiting reason and what to do", "string", a => a.Reasons[0].ToString()),
        new("verdict", "time", "Time of the assessment", "datetime", a => HomiePayload.Of(a.Time)),

        new("air", "temperature", "Air temperature", "float", Reading(Quantity.BoothTemperature), Celsius),
        new("air", "humidity", "Relative humidity", "float", Reading(Quantity.BoothHumidity), Percent),
        new("air", "pressure", "Station pressure", "float", a => HomiePayload.Of(a.Air?.PressurePa), "Pa"),
        new("air", "dew-point", "Dew point", "float", a => HomiePayload.Of(a.Air?.DewPointC), Celsius),
        Quality("air", Quantity.BoothTemperature, Quantity.BoothHumidity),

        new("film", "blush-margin", "Blush margin", "float", a => HomiePayload.Of(a.Film?.BlushMarginC), Celsius),
        new("film", "blush-margin-uncertainty", "Standard uncertainty of the blush margin", "float", a => HomiePayload.Of(a.Film?.MarginUncertaintyC), Celsius),
        new("film", "critical-humidity", "Humidity at which blush begins", "float", a => HomiePayload.Of(a.Film?.CriticalHumidityPct), Percent),
        new("film", "lowest-temperature", "Lowest film temperature", "float", a => HomiePayload.Of(a.Film?.LowestFilmTemperatureC), Celsius),
        new("film", "time-to-set", "Time until the film sets", "float", a => HomiePayload.Of(a.Film?.TimeToSetS), "s"),
        new("film", "retarder", "Retarder level that the figures belong to", "float", a => HomiePayload.Of(a.Film?.RetarderPct), Percent),
        new("film", "recommended-retarder", "Least retarder level that serves", "float", a => HomiePayload.Of(a.Film?.RecommendedRetarderPct), Percent),

        new("piece", "temperature", "Surface temperature", "float", Reading(Quantity.PieceTemperature), Celsius),
        new("piece", "dew-point-clearance", "Height of the surface over the dew point", "float", a => HomiePayload.Of(a.Warming?.ClearanceC), Celsius),
        new("piece", "warm-in", "Time until it is warm enough in this air", "float", a => HomiePayload.Of(WarmIn(a.Warming)), "s"),
        Quality("piece", Quantity.PieceTemperature),

        new("exhaust", "proven", "Fan proven to move air", "boolean", Proof, Format: "not proven,proven"),
        Quality("exhaust", Quantity.ExhaustProof),
        new("exhaust", "filter-pressure-drop", "Pressure drop across the filter", "float", Reading(Quantity.FilterPressureDrop), "Pa"),

        new("intake", "temperature", "Air temperature", "float", Reading(Quantity.IntakeTemperature), Celsius),
        new("intake", "humidity", "Relative humidity", "float", Reading(Quantity.IntakeHumidity), Percent),
        Quality("intake", Quantity.IntakeTemperature, Quantity.IntakeHumidity),
    ];

    // To ten seconds: more finely nobody knows it, and each change is a message. 0 is said of a warm piece alone.
    private static double? WarmIn(PieceWarming? warming) => warming?.State switch
    {
        WarmingState.Warm => 0,
        WarmingState.Warming => Math.Max(10, Math.Round(warming.LeftS!.Value / 10) * 10),
        _ => null,
    };

    private static Func<Assessment, string?> Reading(Quantity quantity) =>
        assessment => assessment.Snapshot[quantity] is { IsGood: true } reading ? HomiePayload.Of(reading.Value) : null;

    private static string? Proof(Assessment assessment) =>
        assessment.Snapshot[Quantity.ExhaustProof] is { IsGood: true } proof ? HomiePayload.Of(proof.Value >= 0.5) : null;

    // The first that is not good speaks for the node.
    private static HomieProperty Quality(string node, params Quantity[] quantities) => new(
        node,
        "quality",
        "Whether the readings may be used",
        "enum",
        assessment => HomiePayload.Word(quantities
            .Select(quantity => assessment.Snapshot[quantity].Quality)
            .FirstOrDefault(quality => quality != ReadingQuality.Good, ReadingQuality.Good)),
        Format: HomiePayload.Words<ReadingQuality>());
}
