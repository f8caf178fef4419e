using System.Collections.Immutable;
using BoothWatch.Alerts;
using BoothWatch.Readings;
using BoothWatch.Tests.Verdicts;
using BoothWatch.Verdicts;

namespace BoothWatch.Tests.Alerts;

/// <summary>A booth that is stepped second by second; what is set holds until it is set anew.</summary>
internal sealed class AlertBooth
{
    private static readonly Reason Holds = new("blush-margin", Verdict.Spray, "the margin holds", "spray");
    private TimeSpan _now = TimeSpan.FromHours(1);

    public AlertLimits Limits { get; set; } = new() { Policy = GoodBooth.RoundLimits };

    public AlertState State { get; set; } = AlertState.Start;

    public DateTimeOffset Time { get; set; } = GoodBooth.Noon;

    public TimeZoneInfo Zone { get; set; } = TimeZoneInfo.Utc;

    public Verdict Verdict { get; set; } = Verdict.Spray;

    public string Rule { get; set; } = "blush-margin";

    public double MarginC { get; set; } = 6;

    public double? LoadedPct { get; set; } = 5;

    public double HighestMarginC { get; set; } = 9;

    public bool Exhaust { get; set; } = true;

    public PieceWarming? Warming { get; set; }

    public Reading[] Instead { get; set; } = [];

    public IReadOnlyList<WatchedJob>? Jobs { get; set; } = [];

    /// <summary>Everything that happened.</summary>
    public List<EpisodeChange> All { get; } = [];

    public int Told(AlertKind kind) => All.Count(change => change.Step == EpisodeStep.Told && change.Episode.Kind == kind);

    public int Lapsed(AlertKind kind) => All.Count(change => change.Step == EpisodeStep.Lapsed && change.Episode.Kind == kind);

    public int Cleared(AlertKind kind) => All.Count(change => change.Step == EpisodeStep.Cleared && change.Episode.Kind == kind);

    /// <summary>Runs for a while in steps of a second; gives what happened meanwhile.</summary>
    public IReadOnlyList<EpisodeChange> Run(double seconds, Action<double>? each = null)
    {
        int before = All.Count;
        for (int second = 0; second < seconds; second++)
        {
            each?.Invoke(second);
            _now += TimeSpan.FromSeconds(1);
            Time += TimeSpan.FromSeconds(1);
            AlertStep step = AlertRules.Step(State, Moment(), Limits);
            State = step.After;
            All.AddRange(step.Changes);
        }

        return [.. All.Skip(before)];
    }

    private AlertMoment Moment()
    {
        BoothSnapshot snapshot = GoodBooth.Snapshot([GoodBooth.Good(Quantity.ExhaustProof, Exhaust ? 1 : 0, 0), .. Instead]) with { Time = Time };
        return new AlertMoment
        {
            Now = _now,
            Jobs = Jobs,
            Zone = Zone,
            Assessment = new Assessment
            {
                Time = Time,
                Snapshot = snapshot,
                Air = GoodBooth.Air(),
                Film = GoodBooth.Film(MarginC, LoadedPct, marginAtHighestC: HighestMarginC),
                Warming = Warming,
                Verdict = Verdict,
                Reasons = ImmutableArray.Create(Verdict == Verdict.Spray ? Holds : new Reason(Rule, Verdict, "dew point 17.8 °C, 0.6 °C over what this mix holds", "wait")),
            },
        };
    }
}
