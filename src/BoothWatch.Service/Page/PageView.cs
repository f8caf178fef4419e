using System.Globalization;
using BoothWatch.Outlook;
using BoothWatch.Readings;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Page;

/// <summary>
/// The state in words, ready to be put on the page: the server writes it into the first HTML, the browser into the same places later.
/// </summary>
public sealed record PageView
{
    /// <summary>Counts the assessments since start.</summary>
    public required long Sequence { get; init; }

    /// <summary>Age of the assessment, s.</summary>
    public required double AgeS { get; init; }

    /// <summary>The verdict as a key: <c>spray</c>, <c>slow-down</c> or <c>wait</c>.</summary>
    public required string Verdict { get; init; }

    /// <summary>When it was sent, s, by a steady clock that only its own differences tell anything about: an event held up on its way is found out by it.</summary>
    public required double SentS { get; init; }

    /// <summary>The cup that millilitres are for, mL of unretarded mix.</summary>
    public required double? CupMl { get; init; }

    /// <summary>The shop's usual cup, mL.</summary>
    public required double? ShopCupMl { get; init; }

    /// <summary>True when the figures are too old to be taken as the present.</summary>
    public required bool Stale { get; init; }

    /// <summary>How the piece stands, as a key, while it is too cold or has just become warm; else empty.</summary>
    public required string Warming { get; init; }

    /// <summary>Text of each named place.</summary>
    public required IReadOnlyDictionary<string, string> Fields { get; init; }

    /// <summary>The reasons after the first, each in one line.</summary>
    public required IReadOnlyList<string> FurtherReasons { get; init; }

    /// <summary>How the sensors fare.</summary>
    public required IReadOnlyList<HealthLine> Sensors { get; init; }

    /// <summary>How the outputs fare.</summary>
    public required IReadOnlyList<HealthLine> Outputs { get; init; }

    /// <summary>The key of a verdict.</summary>
    public static string Key(Verdict verdict) => verdict.Word().Replace(' ', '-');

    /// <summary>Puts the state into words.</summary>
    /// <param name="state">The state.</param>
    /// <param name="sources">What stands beside it.</param>
    /// <param name="text">How to write temperatures.</param>
    /// <param name="time">The clock and the shop's time zone.</param>
    /// <param name="cupMl">Unretarded mix in the reader's cup, mL; null: the shop's usual cup.</param>
    public static PageView Of(CurrentState state, PageSources sources, DegreeText text, TimeProvider time, double? cupMl = null)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(sources);
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(time);
        AirFindings? air = state.Assessment?.Air;
        FilmFindings? asked = state.Assessment?.Film;
        FilmFindings? film = asked is not null && cupMl is { } cup ? asked with { CupMl = cup } : asked;
        Reason[] reasons = [.. film is null ? state.Reasons : state.Reasons.Select(r => RetarderDose.ForCup(r, asked!, film.CupMl))];
        Reason first = reasons[0];
        ClosingMargin? closing = state.IsStale ? null : state.Closing;
        DemoMoment? demo = sources.Demo();
        PieceWarming? warming = state.IsStale ? null : state.Assessment?.Warming;

        // An air too cold for the piece is news where the piece is what stands in the way.
        bool isBeside = warming?.State == WarmingState.AirTooCold && !first.Rule.StartsWith("piece-", StringComparison.Ordinal);
        PieceText piece = new(warming, text, isTyped: sources.PieceEntry is not null);
        return new PageView
        {
            Sequence = state.Sequence,
            AgeS = Math.Round(state.Age.TotalSeconds, 2),
            Verdict = Key(state.Verdict),
            SentS = Math.Round(time.GetTimestamp() / (double)time.TimestampFrequency, 2),
            CupMl = film?.CupMl,
            ShopCupMl = asked?.CupMl,
            Stale = state.IsStale,
            Warming = isBeside ? "" : piece.Key,
            FurtherReasons = [.. reasons.Skip(1).Select(r => DegreeText.Tie(r.ToString()))],
            Sensors = [.. sources.Sensors.Select(s => HealthOf(s, state.Assessment?.Snapshot, new TemperatureText(sources.TemperatureUnit), sources.Remark(s.Name)))],
            Outputs = [.. sources.Outputs().Select(o => new HealthLine(o.Name, o.Working ? "good" : "failing", o.Detail, o.Working))],
            Fields = new Dictionary<string, string>
            {
                ["place"] = Place(sources),
                ["demo"] = demo is null ? "" : $"{(demo.NewDay ? "next shop day, " : "")}shop clock {demo.ShopClock}, {demo.Phase}",
                ["word"] = Capital(state.Verdict.Word()),
                ["finding"] = DegreeText.Tie(first.Finding),
                ["action"] = DegreeText.Tie(first.Action),
                ["coat"] = Coat(film),
                ["mix"] = film?.Mix ?? "",
                ["retarder"] = film is null ? DegreeText.Unknown
                    : DegreeText.Tie(RetarderDose.Mark(film)),
                ["retarderMl"] = film is null ? "" : DegreeText.Tie(RetarderDose.Advice(film)),
                ["left"] = MinutesText.Mark(closing),
                ["leftMeaning"] = MinutesText.Meaning(closing, text),
                ["temperature"] = text.Temperature(air?.TemperatureC ?? Known(state, Quantity.BoothTemperature)),
                ["humidity"] = DegreeText.Percent(air?.RelativeHumidityPct ?? Known(state, Quantity.BoothHumidity)),
                ["criticalHumidity"] = DegreeText.Percent(film?.CriticalHumidityPct),
                ["dewPoint"] = text.Temperature(air?.DewPointC),
                ["dewPointUncertainty"] = air is null ? "" : text.Uncertainty(air.DewPointUncertaintyC),
                ["margin"] = text.Difference(film?.BlushMarginC),
                ["marginUncertainty"] = film is null ? "" : text.Uncertainty(film.MarginUncertaintyC),
                ["piece"] = text.Temperature(air?.PieceTemperatureC ?? Known(state, Quantity.PieceTemperature)),
                ["pieceClear"] = piece.Clearance,
                ["warm"] = piece.Mark,
                ["warmMeaning"] = piece.Meaning(TimeOfDay(state, demo, time)),
                ["warmBasis"] = piece.Basis,
                ["warmCare"] = piece.Care,
                ["warmHeard"] = piece.Heard,
                ["pieceTyped"] = sources.PieceEntry?.Words ?? "",
                ["film"] = text.Temperature(film?.LowestFilmTemperatureC),
                ["measuredAt"] = state.Assessment is null ? "never"
                    : TimeZoneInfo.ConvertTime(state.Assessment.Time, time.LocalTimeZone).ToString("HH:mm:ss", CultureInfo.InvariantCulture),
            },
        };
    }

    // The clock on the wall of the shop, which runs faster where its day is a script.
    private static TimeSpan TimeOfDay(CurrentState state, DemoMoment? demo, TimeProvider time) =>
        demo is not null && TimeSpan.TryParseExact(demo.ShopClock, @"h\:mm", CultureInfo.InvariantCulture, out TimeSpan shop) ? shop
        : TimeZoneInfo.ConvertTime(state.Assessment?.Time ?? time.GetUtcNow(), time.LocalTimeZone).TimeOfDay;

    private static string Capital(string word) => char.ToUpperInvariant(word[0]) + word[1..];

    private static string Place(PageSources sources) => (sources.Booth, sources.Shop) switch
    {
        ("", "") => "booth",
        ("", _) => sources.Shop,
        (_, "") => $"{sources.Booth} booth",
        _ => $"{sources.Booth} booth, {sources.Shop}",
    };

    private static string Coat(FilmFindings? film) => film switch
    {
        null => "coat not known",
        { LoadedRetarderPct: { } loaded } => $"{film.Coat} coat, in the cup now: {DegreeText.Tie(RetarderText.Level(loaded))}, reckoned for {FullCup(film)}",
        _ => $"{film.Coat} coat, no cup mixed yet",
    };

    private static string FullCup(FilmFindings film) => string.Create(CultureInfo.InvariantCulture, $"a full cup of {film.CupMl:0.#}\u00a0mL");

    /// <summary>A good reading, for the time when not enough is known to speak of the air as a whole.</summary>
    private static double? Known(CurrentState state, Quantity quantity) =>
        state.Assessment?.Snapshot[quantity] is { IsGood: true } reading ? reading.Value : null;

    private static HealthLine HealthOf(SensorLine sensor, BoothSnapshot? snapshot, TemperatureText text, string? remark)
    {
        Reading[] readings = snapshot is null
            ? []
            : [.. sensor.Quantities.Select(q => snapshot[q]).Concat(snapshot.Others).Where(r => r.Sensor == sensor.Name)];
        Reading? bad = readings.FirstOrDefault(r => !r.IsGood);
        return readings.Length == 0 ? new HealthLine(sensor.Name, "no answer yet", sensor.Description, false)
            : bad is null ? new HealthLine(sensor.Name, "good", remark is null ? sensor.Description : $"{sensor.Description}: {remark}", true)
            : new HealthLine(sensor.Name, QualityWord(bad.Quality), bad.Cause is { } cause ? $"{sensor.Description}: {text.Of(cause)}" : sensor.Description, false);
    }

    private static string QualityWord(ReadingQuality quality) => quality switch
    {
        ReadingQuality.NoReading => "no reading",
        ReadingQuality.OutOfRange => "out of range",
        ReadingQuality.BeingChecked => "being checked",
        ReadingQuality.FailedCheck => "failed its check",
        _ => quality.ToString().ToLowerInvariant(),
    };
}
