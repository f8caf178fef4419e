using BoothWatch.Air;
using BoothWatch.Film;
using BoothWatch.Jobs;
using BoothWatch.Readings;
using BoothWatch.Records;
using BoothWatch.Service.Records;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Tests.Records;

/// <summary>Invented jobs of the Harbour Lane shop with as many coats as asked for, four a day, in air that turns damp in the afternoon.</summary>
internal static class SampleRecord
{
    public const string Piece = "Stühlchen – „Größe 5“, 200 µm Ölgrund bei 20 °C & 50 %";
    public static readonly DateTimeOffset Day = new(2026, 6, 3, 0, 0, 0, TimeSpan.Zero);
    public static readonly RecordIssue Issue = new(Day.AddDays(9).AddHours(9.5), "BoothWatch 0.1.0");
    private const double PressurePa = 101_200;
    private const int CoatsADay = 4;
    private static readonly CoatKind[] Kinds = [CoatKind.Flash, CoatKind.Clear, CoatKind.Flash, CoatKind.Clear];

    public static RecordDocument Document(int coats, string piece = Piece) => RecordDocument.Of(Record(coats, piece), Issue);

    public static EnvironmentRecord Record(int coats, string piece = Piece, bool isDemo = false)
    {
        Job job = JobOf(coats, piece);
        return RecordComposer.Compose(new RecordInputs
        {
            Job = job,
            Shop = "Harbour Lane",
            Booth = "corner",
            IsDemo = isDemo,
            AirOf = coat => Spraying(coat.Details),
            ReasonsAt = moment => ["dew point " + moment.DewPointC.ToString("0.0", System.Globalization.CultureInfo.InvariantCulture) + " °C, only 0.4 °C below what this mix holds"],
            Air = [.. RecordSpan.Of(job, Day.AddDays(30)).Select(Stretch)],
            Sensors =
            [
                new RecordSensor("boothAir", "SHT4x at 0x44 on bus 1", [Quantity.BoothTemperature, Quantity.BoothHumidity], false, null),
                new RecordSensor("piece", "MLX90614 at 0x5A on bus 1", [Quantity.PieceTemperature], false, new SensorCheck(Day.AddDays(-12), "0.2 °C above the reference in a stirred ice bath")),
            ],
        });
    }

    public static Job JobOf(int coats, string piece)
    {
        List<JobEntry> entries = [];
        void Add(DateTimeOffset at, JobChange change, string by = "page") => entries.Add(new JobEntry(entries.Count + 1, 3, at, by, change));
        Add(Day.AddHours(7), new JobStarted(new JobDetails(piece, "clear lacquer, satin", "touch-up", "left edge was repaired")));
        DateTimeOffset last = Day.AddHours(8);
        for (int i = 0; i < coats; i++)
        {
            DateTimeOffset start = Day.AddDays(i / CoatsADay).AddHours(i % CoatsADay == 3 ? 14 : 8).AddMinutes(i % CoatsADay * 25);
            CoatDetails details = Details(Kinds[i % CoatsADay], start);
            Add(start, new CoatMarked(i + 1, details, Moment(start)), "button");
            last = start.AddMinutes(6);
            Add(last, new CoatStopped(i + 1, last), "button");
            Add(last.AddHours(1), new OutcomeMarked(i + 1, i == 3 ? CoatOutcome.Blushed : CoatOutcome.Clear, i == 3 ? "white haze along the lower edge" : ""));
            if (i == 1)
            {
                CoatDetails corrected = details with { Stop = last, Mix = details.Mix with { RetarderPct = 5 } };
                Add(last.AddHours(2), new CoatCorrected(i + 1, corrected, Moment(start), "read the cup again"));
            }
        }

        Add(last.AddMinutes(30), new CoatMarked(90, Details(CoatKind.Sealer, last.AddMinutes(30)), Moment(last.AddMinutes(30))));
        Add(last.AddMinutes(31), new TakenBack(entries[^1].Id));
        Add(last.AddDays(1), new JobFinished());
        return Job.From(entries);
    }

    private static CoatDetails Details(CoatKind kind, DateTimeOffset start) => new()
    {
        Kind = kind,
        Mix = new CoatMix("nitrocellulose lacquer", 1, "ordinary thinner", kind == CoatKind.Flash ? 4 : 1, "2-butoxyethanol", start.Hour > 12 ? 8 : 2.5),
        WetFilmUm = kind == CoatKind.Flash ? 40 : 75,
        Substrate = "wood",
        AirSpeedMPerS = 0.5,
        Start = start,
    };

    private static CoatMoment Moment(DateTimeOffset time)
    {
        (double temperatureC, double humidityPct, double dewPointC, double pieceC, Verdict verdict) = At(time);
        return new CoatMoment
        {
            Time = time,
            AirTemperatureC = temperatureC,
            RelativeHumidityPct = humidityPct,
            PressurePa = PressurePa,
            DewPointC = dewPointC,
            PieceTemperatureC = pieceC,
            Verdict = verdict,
            BlushMarginC = 17.2 - dewPointC,
            MarginUncertaintyC = 0.83,
            RecommendedRetarderPct = verdict == Verdict.Wait ? null : 3,
        };
    }

    private static (double TemperatureC, double HumidityPct, double DewPointC, double PieceC, Verdict Verdict) At(DateTimeOffset time)
    {
        double hour = time.TimeOfDay.TotalHours;
        double temperatureC = 19 + (3 * Math.Sin((hour - 7) / 12 * Math.PI)) + (0.3 * time.Day % 2);
        double humidityPct = 48 + (32 / (1 + Math.Exp(-(hour - 12.5) * 1.6)));
        double dewPointC = MoistAir.FromRelativeHumidity(temperatureC, humidityPct, PressurePa).DewPointC;
        Verdict verdict = dewPointC > 16.2 ? Verdict.Wait : dewPointC > 15 ? Verdict.SlowDown : Verdict.Spray;
        return (temperatureC, humidityPct, dewPointC, temperatureC - 0.8, verdict);
    }

    private static CoatAir Spraying(CoatDetails details)
    {
        (double temperatureC, double humidityPct, double dewPointC, double pieceC, Verdict verdict) = At(details.Start);
        AirSpan About(double value) => new(value, value - 0.2, value + 0.3);
        return new CoatAir
        {
            From = details.Start,
            To = details.Start.AddMinutes(7),
            Count = 420,
            FromRows = false,
            TemperatureC = About(temperatureC),
            RelativeHumidityPct = About(humidityPct),
            DewPointC = About(dewPointC),
            PieceTemperatureC = About(pieceC),
            BlushMarginC = About(17.2 - dewPointC),
            WorstVerdict = verdict,
        };
    }

    private static AirStretch Stretch(RecordSpan span)
    {
        List<AirPoint> points = [];
        for (DateTimeOffset time = span.From; time < span.To; time += span.Step)
        {
            // A silence at noon: the lines must break there.
            if (time.Hour != 12)
            {
                (double temperatureC, double humidityPct, double dewPointC, double pieceC, Verdict verdict) = At(time);
                points.Add(new AirPoint(time, temperatureC, humidityPct, dewPointC, pieceC, verdict));
            }
        }

        return new AirStretch(span.From, span.To, (int)span.Step.TotalSeconds, points);
    }
}
