using System.Collections.Immutable;
using BoothWatch.Outlook;
using BoothWatch.Verdicts;

namespace BoothWatch.Alerts;

/// <summary>The margin over the last minutes, and the straight line through it.</summary>
/// <param name="Points">Monotonic time and margin in °C, oldest first.</param>
/// <param name="Cup">What they belong to; another cup begins anew.</param>
/// <remarks>
/// Where the cup is mixed its own margin is followed. Where none is, the margin at the highest level of the ladder: that of the
/// recommended level jumps whenever another level is recommended.
/// </remarks>
public sealed record MarginTrack(ImmutableList<(TimeSpan At, double MarginC)> Points, string? Cup)
{
    /// <summary>No points.</summary>
    public static MarginTrack Empty { get; } = new([], null);

    private static readonly TimeSpan Spacing = TimeSpan.FromSeconds(10);
    private static readonly TimeSpan LongestGap = TimeSpan.FromSeconds(60);

    /// <summary>The margin that is followed, °C.</summary>
    public static double Followed(FilmFindings film)
    {
        ArgumentNullException.ThrowIfNull(film);
        return film.LoadedRetarderPct is null ? film.MarginAtHighestRetarderC : film.BlushMarginC;
    }

    /// <summary>The track a moment later.</summary>
    public MarginTrack Next(AlertMoment moment, AlertLimits limits)
    {
        ArgumentNullException.ThrowIfNull(moment);
        ArgumentNullException.ThrowIfNull(limits);
        if (moment.Assessment.Film is not { } film || !double.IsFinite(Followed(film)))
        {
            return this;
        }

        string cup = FormattableString.Invariant($"{film.Coat}|{film.Mix}|{film.LoadedRetarderPct}");
        bool anew = cup != Cup || (!Points.IsEmpty && (moment.Now - Points[^1].At > LongestGap || moment.Now < Points[^1].At));
        if (!anew && !Points.IsEmpty && moment.Now - Points[^1].At < Spacing)
        {
            return this;
        }

        ImmutableList<(TimeSpan At, double)> kept = anew ? [] : Points.RemoveAll(point => moment.Now - point.At > limits.MarginWindow);
        return new MarginTrack(kept.Add((moment.Now, Followed(film))), cup);
    }

    /// <summary>
    /// The line through the means of the parts of the window, as in <see cref="ClosingMargin"/>: margin in °C over minutes from now; null
    /// before half of the window is known.
    /// </summary>
    public StraightLine? LineAt(TimeSpan now, AlertLimits limits)
    {
        ArgumentNullException.ThrowIfNull(limits);
        if (Points.IsEmpty || Points[^1].At - Points[0].At < limits.MarginWindow / 2)
        {
            return null;
        }

        (double X, double Y)[] parts =
        [
            .. Points
                .GroupBy(point => Math.Min(ClosingMargin.Parts - 1, (int)((now - point.At) / limits.MarginWindow * ClosingMargin.Parts)))
                .OrderByDescending(part => part.Key)
                .Select(part => (part.Average(point => (point.At - now).TotalMinutes), part.Average(point => point.MarginC))),
        ];
        return parts.Length < StraightLine.FewestPoints ? null : StraightLine.Through([.. parts.Select(part => part.X)], [.. parts.Select(part => part.Y)]);
    }
}
