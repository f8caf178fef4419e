using BoothWatch.Jobs;
using BoothWatch.Records;
using BoothWatch.Service.Jobs;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Records;

/// <summary>The columns of the CSV of layout 1, one row a coat. A change of them needs a new layout.</summary>
internal static class RecordColumns
{
    public static IReadOnlyList<RecordColumn> All { get; } =
    [
        Text("shop", "Shop", "Name of the shop.", (document, _) => document.Record.Shop) with { Required = true },
        Text("booth", "Booth", "Name of the booth.", (document, _) => document.Record.Booth) with { Required = true },
        new("demo", "Demo", "boolean", "True when nothing of it was real.", (document, _) => document.Record.IsDemo) { Required = true },
        Whole("job", "Job", "Number of the job.", (document, _) => document.Record.Job.Id) with { Required = true },
        Text("piece", "Piece", "The piece, in the shop's words.", (document, _) => document.Record.Job.Details.Piece) with { Required = true },
        Text("finish", "Finish", "The finish, in the shop's words.", (document, _) => document.Record.Job.Details.Finish),
        Whole("coat", "Coat", "Place of the coat among those of the job, from 1.", (_, coat) => coat.Place) with { Required = true },
        Whole("coatId", "Coat number", "Number of the coat, unique over all jobs.", (_, coat) => coat.Id) with { Required = true },
        Text("kind", "Kind", "flash, clear, colour or sealer.", (_, coat) => coat.Details.Kind.Word()) with { Required = true },
        Time("start", "Start", "When spraying began.", (_, coat) => coat.Details.Start) with { Required = true },
        Time("stop", "Stop", "When spraying ended; empty when nobody marked it.", (_, coat) => coat.Details.Stop),
        Text("lacquer", "Lacquer", "Lacquer in the cup.", (_, coat) => coat.Details.Mix.Lacquer) with { Required = true },
        Figure("lacquerParts", "Parts of lacquer", null, "By volume.", (_, coat) => coat.Details.Mix.LacquerParts) with { Required = true },
        Text("thinner", "Thinner", "Thinner in the cup.", (_, coat) => coat.Details.Mix.Thinner) with { Required = true },
        Figure("thinnerParts", "Parts of thinner", null, "By volume.", (_, coat) => coat.Details.Mix.ThinnerParts) with { Required = true },
        Text("retarder", "Retarder", "Retarder in the cup, where its level is above 0.", (_, coat) => coat.Details.Mix.Retarder) with { Required = true },
        Figure("retarderPct", "Retarder level", RecordUnit.Percent, "By volume of the mix before it was added.", (_, coat) => coat.Details.Mix.RetarderPct) with { Required = true },
        Figure("recommendedRetarderPct", "Retarder recommended", RecordUnit.Percent, "What BoothWatch recommended for this coat; empty when no level served or the air was not known.", (_, coat) => coat.AtStart?.RecommendedRetarderPct),
        Figure("wetFilmUm", "Wet film", RecordUnit.Micrometre, "Thickness of the wet film.", (_, coat) => coat.Details.WetFilmUm) with { Required = true },
        Text("substrate", "Substrate", "What the film lies on.", (_, coat) => coat.Details.Substrate) with { Required = true },
        Figure("airSpeedMPerS", "Air speed", RecordUnit.MetrePerSecond, "Air speed over the piece, as set.", (_, coat) => coat.Details.AirSpeedMPerS) with { Required = true },
        Figure("airTemperatureC", "Air at start", RecordUnit.DegreeCelsius, "Air temperature at the start of the coat.", (_, coat) => coat.AtStart?.AirTemperatureC),
        Figure("relativeHumidityPct", "Humidity at start", RecordUnit.Percent, "Relative humidity at the start.", (_, coat) => coat.AtStart?.RelativeHumidityPct),
        Figure("dewPointC", "Dew point at start", RecordUnit.DegreeCelsius, "Dew point at the start.", (_, coat) => coat.AtStart?.DewPointC),
        Figure("pieceTemperatureC", "Piece at start", RecordUnit.DegreeCelsius, "Surface temperature of the piece at the start.", (_, coat) => coat.AtStart?.PieceTemperatureC),
        Figure("pressurePa", "Pressure at start", RecordUnit.Pascal, "Station pressure at the start.", (_, coat) => coat.AtStart?.PressurePa),
        Figure("blushMarginC", "Blush margin at start", RecordUnit.DegreeCelsius, "By so much the dew point could have risen before this coat would blush, by the model; negative: it blushes.", (_, coat) => coat.AtStart?.BlushMarginC),
        Figure("marginUncertaintyC", "Uncertainty of the margin", RecordUnit.DegreeCelsius, "Standard uncertainty (k = 1).", (_, coat) => coat.AtStart?.MarginUncertaintyC),
        Text("verdict", "Verdict at start", "spray, slow down or wait; empty when none is on record.", (_, coat) => coat.AtStart?.Verdict.Word()),
        Text("override", "Override", "Empty when the verdict was spray; else what happened.", (_, coat) => coat.Override?.Finding),
        .. Span("Temperature", "C", "Air", RecordUnit.DegreeCelsius, air => air.TemperatureC),
        .. Span("Humidity", "Pct", "Humidity", RecordUnit.Percent, air => air.RelativeHumidityPct),
        .. Span("DewPoint", "C", "Dew point", RecordUnit.DegreeCelsius, air => air.DewPointC),
        .. Span("Piece", "C", "Piece", RecordUnit.DegreeCelsius, air => air.PieceTemperatureC),
        Text("worstVerdict", "Worst verdict while spraying", "spray, slow down or wait.", (_, coat) => coat.WhileSprayed?.WorstVerdict?.Word()),
        Text("outcome", "Outcome", "clear, blushed, runs, dry-spray, orange-peel or soft; empty until somebody says.", (_, coat) => coat.Outcome?.Word()),
        Text("outcomeNote", "Note on the outcome", "In the shop's words.", (_, coat) => coat.OutcomeNote),
        Whole("corrections", "Corrections", "How often the coat was corrected; the originals are in the record.", (_, coat) => coat.Corrections.Count) with { Required = true },
        Text("recordSha256", "SHA-256 of the record", "Of the data of the whole record that this row was taken from.", (document, _) => document.Sha256) with { Required = true },
    ];

    private static IEnumerable<RecordColumn> Span(string name, string suffix, string title, RecordUnit unit, Func<CoatAir, AirSpan?> pick) =>
    [
        Figure($"mean{name}{suffix}", $"{title} while spraying, mean", unit, "Mean of the whole minutes from start to stop.", (_, coat) => coat.WhileSprayed is { } air ? pick(air)?.Mean : null),
        Figure($"least{name}{suffix}", $"{title} while spraying, least", unit, "Least of the whole minutes from start to stop.", (_, coat) => coat.WhileSprayed is { } air ? pick(air)?.Min : null),
        Figure($"most{name}{suffix}", $"{title} while spraying, most", unit, "Most of the whole minutes from start to stop.", (_, coat) => coat.WhileSprayed is { } air ? pick(air)?.Max : null),
    ];

    private static RecordColumn Text(string name, string title, string description, Func<RecordDocument, RecordCoat, string?> value) =>
        new(name, title, "string", description, value);

    private static RecordColumn Time(string name, string title, string description, Func<RecordDocument, RecordCoat, DateTimeOffset?> value) =>
        new(name, title, "dateTimeStamp", description, (document, coat) => value(document, coat));

    private static RecordColumn Whole(string name, string title, string description, Func<RecordDocument, RecordCoat, long> value) =>
        new(name, title, "integer", description, (document, coat) => value(document, coat));

    private static RecordColumn Figure(string name, string title, RecordUnit? unit, string description, Func<RecordDocument, RecordCoat, double?> value) =>
        new(name, title, "decimal", description, (document, coat) => value(document, coat)) { Unit = unit };
}
