using BoothWatch.Jobs;

namespace BoothWatch.Records;

/// <summary>A span of time whose air a record shows.</summary>
/// <param name="From">Start, UTC, on a step.</param>
/// <param name="To">End, UTC, not included, on a step.</param>
/// <param name="Step">Length of a step.</param>
public sealed record RecordSpan(DateTimeOffset From, DateTimeOffset To, TimeSpan Step)
{
    /// <summary>How long a coat without a marked end is taken to have been sprayed.</summary>
    public static readonly TimeSpan UnmarkedSpray = TimeSpan.FromMinutes(10);

    /// <summary>What is shown before a coat, and after it.</summary>
    private static readonly TimeSpan Before = TimeSpan.FromHours(1);
    private static readonly TimeSpan After = TimeSpan.FromHours(2);

    /// <summary>Spans that are less apart are shown as one: those of a working day.</summary>
    private static readonly TimeSpan Apart = TimeSpan.FromHours(6);

    private const int MostPoints = 240;
    private static readonly int[] StepsMin = [5, 10, 15, 30, 60, 120, 360, 1440];

    /// <summary>
    /// The spans around the coats of a job: from an hour before each to two hours after it, joined where they meet or nearly so.
    /// Only whole steps that are over: a step once shown does not change.
    /// </summary>
    /// <param name="job">The job.</param>
    /// <param name="now">The present time, UTC.</param>
    public static IReadOnlyList<RecordSpan> Of(Job job, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(job);
        List<(DateTimeOffset From, DateTimeOffset To)> spans = [];
        foreach (JobCoat coat in job.Coats)
        {
            (DateTimeOffset from, DateTimeOffset to) = (coat.Details.Start - Before, StopOf(coat.Details) + After);
            if (spans is [.., var last] && from - last.To <= Apart)
            {
                spans[^1] = (last.From, to > last.To ? to : last.To);
            }
            else
            {
                spans.Add((from, to));
            }
        }

        return [.. spans.Select(span => InSteps(span.From, span.To, now)).Where(span => span.To > span.From)];
    }

    /// <summary>When a coat ended, as far as anybody marked.</summary>
    public static DateTimeOffset StopOf(CoatDetails details)
    {
        ArgumentNullException.ThrowIfNull(details);
        return details.Stop ?? details.Start + UnmarkedSpray;
    }

    private static RecordSpan InSteps(DateTimeOffset from, DateTimeOffset to, DateTimeOffset now)
    {
        int minutes = StepsMin.FirstOrDefault(step => (to - from).TotalMinutes / step <= MostPoints, StepsMin[^1]);
        TimeSpan step = TimeSpan.FromMinutes(minutes);
        DateTimeOffset end = Floor(to + step - TimeSpan.FromTicks(1), step);
        DateTimeOffset over = Floor(now, step);
        return new RecordSpan(Floor(from, step), end < over ? end : over, step);
    }

    private static DateTimeOffset Floor(DateTimeOffset time, TimeSpan step) => new(time.UtcTicks - (time.UtcTicks % step.Ticks), TimeSpan.Zero);
}
