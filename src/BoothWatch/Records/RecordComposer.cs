using BoothWatch.Jobs;
using BoothWatch.Verdicts;

namespace BoothWatch.Records;

/// <summary>Makes the record of a job. It renders nothing and asks nobody: the same inputs give the same record.</summary>
public static class RecordComposer
{
    /// <summary>Decimals of temperatures (°C), margins (°C) and humidity (%): as fine as the sensors tell apart.</summary>
    public const int Decimals = 2;

    /// <summary>The record of a job.</summary>
    /// <param name="inputs">What it is made from.</param>
    public static EnvironmentRecord Compose(RecordInputs inputs)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        Job job = inputs.Job;
        RecordCoat[] coats = [.. job.Coats.Select(coat => CoatOf(coat, inputs))];
        return new EnvironmentRecord
        {
            Format = EnvironmentRecord.PresentFormat,
            Shop = inputs.Shop,
            Booth = inputs.Booth,
            IsDemo = inputs.IsDemo,
            Job = JobOf(job),
            Coats = coats,
            TakenBack = TakenBackOf(job),
            Sensors = inputs.Sensors,
            Air = [.. inputs.Air.Select(Rounded)],
            Uncertainty = UncertaintyWords.Of(coats, inputs.Sensors),
            Caution = EnvironmentRecord.CautionText,
        };
    }

    private static RecordJob JobOf(Job job)
    {
        JobCorrection[] corrections =
        [
            .. from entry in Holding(job)
               let change = entry.Change as JobCorrected
               where change is not null
               select new JobCorrection(entry.At, entry.By, change.Why, change.Details),
        ];
        JobDetails original = ((JobStarted)job.Entries[0].Change).Details;
        return new RecordJob(job.Id, job.Started, job.Finished, job.Details, corrections.Length > 0 ? original : null, corrections);
    }

    private static RecordCoat CoatOf(JobCoat coat, RecordInputs inputs)
    {
        JobEntry mark = inputs.Job.Entries.Last(entry => entry.Change is CoatMarked marked && marked.CoatId == coat.Id);
        CoatMoment? marked = ((CoatMarked)mark.Change).Moment;
        bool corrected = coat.Corrections.Count > 0;
        CoatAir air = inputs.AirOf(coat);
        return new RecordCoat
        {
            Place = coat.Place,
            Id = coat.Id,
            MarkedAt = mark.At,
            MarkedBy = coat.MarkedBy,
            Details = coat.Details,
            AtStart = Rounded(coat.Moment),
            WhileSprayed = air.Count > 0 ? Rounded(air) : null,
            Override = OverrideOf(coat.Moment, corrected ? marked : null, corrected, inputs.ReasonsAt),
            Outcome = coat.Outcome,
            OutcomeNote = coat.OutcomeNote,
            Original = corrected ? coat.Original : null,
            OriginalAtStart = corrected ? Rounded(marked) : null,
            Corrections =
            [
                .. coat.Corrections.Select(entry => (entry, change: (CoatCorrected)entry.Change))
                    .Select(pair => new CoatCorrection(pair.entry.At, pair.entry.By, pair.change.Why, pair.change.Details)),
            ],
        };
    }

    /// <summary>A correction takes no override away: what was shown when the coat was marked still counts.</summary>
    private static CoatOverride? OverrideOf(
        CoatMoment? moment, CoatMoment? original, bool corrected, Func<CoatMoment, IReadOnlyList<string>> reasonsAt)
    {
        if (moment is null)
        {
            return new CoatOverride(null, "no verdict is on record for its start: the air was not known", []);
        }

        if (moment.Verdict != Verdict.Spray)
        {
            return new CoatOverride(moment.Verdict, $"begun while the verdict was {moment.Verdict.Word()}", reasonsAt(moment));
        }

        return corrected && original is { } marked && marked.Verdict != Verdict.Spray
            ? new CoatOverride(
                marked.Verdict,
                $"marked while the verdict was {marked.Verdict.Word()}; for its start as corrected it was {moment.Verdict.Word()}",
                reasonsAt(marked))
            : null;
    }

    // The coats whose mark is taken back at present.
    private static TakenBackCoat[] TakenBackOf(Job job) =>
    [
        .. from entry in job.Entries
           let marked = entry.Change as CoatMarked
           where marked is not null && job.TakenBackEntries.Contains(entry.Id)
           select new TakenBackCoat(marked.CoatId, entry.At, marked.Details),
    ];

    private static IEnumerable<JobEntry> Holding(Job job) => job.Entries.Where(entry => !job.TakenBackEntries.Contains(entry.Id));

    private static CoatMoment? Rounded(CoatMoment? moment) => moment is null ? null : moment with
    {
        AirTemperatureC = Rounded(moment.AirTemperatureC),
        RelativeHumidityPct = Rounded(moment.RelativeHumidityPct),
        PressurePa = Math.Round(moment.PressurePa),
        DewPointC = Rounded(moment.DewPointC),
        PieceTemperatureC = Rounded(moment.PieceTemperatureC),
        BlushMarginC = Rounded(moment.BlushMarginC),
        MarginUncertaintyC = Rounded(moment.MarginUncertaintyC),
    };

    private static CoatAir Rounded(CoatAir air) => air with
    {
        TemperatureC = Rounded(air.TemperatureC),
        RelativeHumidityPct = Rounded(air.RelativeHumidityPct),
        DewPointC = Rounded(air.DewPointC),
        PieceTemperatureC = Rounded(air.PieceTemperatureC),
        BlushMarginC = Rounded(air.BlushMarginC),
    };

    private static AirStretch Rounded(AirStretch stretch) => stretch with
    {
        Points =
        [
            .. stretch.Points.Select(point => point with
            {
                TemperatureC = Rounded(point.TemperatureC),
                RelativeHumidityPct = Rounded(point.RelativeHumidityPct),
                DewPointC = Rounded(point.DewPointC),
                PieceTemperatureC = Rounded(point.PieceTemperatureC),
            }),
        ],
    };

    private static AirSpan? Rounded(AirSpan? span) => span is null ? null : new AirSpan(Rounded(span.Mean), Rounded(span.Min), Rounded(span.Max));

    private static double? Rounded(double? value) => value is { } known ? Rounded(known) : null;

    // Zero is added so that no figure is minus zero.
    private static double Rounded(double value) => Math.Round(value, Decimals) + 0.0;
}
