using BoothWatch.Verdicts;

namespace BoothWatch.Service.Outputs.Series;

/// <summary>
/// Journals every assessment in a transaction of its own: the row, its minute and, when the verdict changed, the change.
/// Makes the summaries of past hours and clears away old rows, both a batch at a time between writes.
/// </summary>
public sealed class SeriesOutput : IAssessmentOutput
{
    // Two days of hours take a few milliseconds, and five years of an older journal are made in a quarter of an hour.
    internal const int HoursAStep = 48;

    private static readonly TimeSpan SweepEvery = TimeSpan.FromHours(1);

    private readonly Journal _journal;
    private readonly TimeProvider _time;
    private readonly Retention _retention;
    private Verdict? _lastVerdict;
    private long? _lastSweep;
    private long? _hour;
    private bool _hoursAreDue;

    /// <summary>An output over a journal.</summary>
    public SeriesOutput(Journal journal, SeriesOptions options, TimeProvider time)
        : this(journal, time, new Retention(options.RawDays, options.MinuteYears, options.UnshippedDays))
    {
    }

    internal SeriesOutput(Journal journal, TimeProvider time, Retention retention) =>
        (_journal, _time, _retention) = (journal, time, retention);

    /// <inheritdoc/>
    public string Name => "series";

    /// <inheritdoc/>
    /// <exception cref="JournalException">Nothing of the assessment was written; the message names the file and the fix.</exception>
    public Task HandleAsync(Assessment assessment, CancellationToken cancellationToken)
    {
        cancellationToken.ThrowIfCancellationRequested();
        SweepIfDue(assessment);
        MakeHoursIfDue(assessment);
        bool changed = assessment.Verdict != _lastVerdict;
        _journal.Write(durable: changed, connection =>
        {
            ReadingStatements.Insert(connection, assessment);
            if (changed)
            {
                VerdictChangeStatements.Insert(connection, _lastVerdict, assessment);
            }
        });
        _lastVerdict = assessment.Verdict;
        return Task.CompletedTask;
    }

    private void SweepIfDue(Assessment assessment)
    {
        bool due = _lastSweep is not { } last || _time.GetElapsedTime(last) >= SweepEvery;
        if (!due || !assessment.Snapshot.ClockProven)
        {
            return;
        }

        // Noted before, so that a failing sweep is reported once and the retry writes the row.
        _lastSweep = _time.GetTimestamp();
        bool more = false;
        _journal.Write(durable: false, connection => more = _retention.Sweep(connection, assessment.Time));
        if (more)
        {
            _lastSweep = null;
        }

        _hoursAreDue = true;
    }

    private void MakeHoursIfDue(Assessment assessment)
    {
        long hour = HourStatements.HourOf(assessment.Time.ToUnixTimeMilliseconds());
        if (hour == _hour && !_hoursAreDue)
        {
            return;
        }

        // Noted before, as with a sweep: what fails is tried again in the next hour, and until then the minutes answer for it.
        (_hour, _hoursAreDue) = (hour, false);
        bool more = false;
        _journal.Write(durable: false, connection => more = HourStatements.Make(connection, hour, HoursAStep));
        _hoursAreDue = more;
    }
}
