using System.Globalization;
using BoothWatch.Jobs;
using BoothWatch.Service.Jobs;
using BoothWatch.Service.Page;

namespace BoothWatch.Service.Records;

/// <summary>How a record writes figures and times: in the unit that the shop reads, in its time zone, the offset beside every date.</summary>
internal sealed class RecordText(DegreeText degrees, TimeZoneInfo zone)
{
    private const string NoBreak = "\u00a0";

    public DegreeText Degrees => degrees;

    public TimeZoneInfo Zone => zone;

    /// <summary>A date with the offset, for example <c>Wednesday 3 June 2026 (UTC+02:00)</c>.</summary>
    public string Day(DateTimeOffset time) => Format(time, "dddd d MMMM yyyy") + $" ({Offset(time)})";

    public string ShortDay(DateTimeOffset time) => Format(time, "d MMM yyyy");

    public string Clock(DateTimeOffset time) => Format(time, "HH:mm");

    /// <summary>A date, a time and the offset, for example <c>3 Jun 2026, 10:05 (UTC+02:00)</c>.</summary>
    public string Moment(DateTimeOffset time) => Format(time, "d MMM yyyy, HH:mm") + $" ({Offset(time)})";

    public DateOnly DateOf(DateTimeOffset time) => DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(time, zone).DateTime);

    /// <summary>The days of a job, for example <c>3 to 5 Jun 2026</c>.</summary>
    public string Days(DateTimeOffset from, DateTimeOffset to) =>
        DateOf(from) == DateOf(to) ? ShortDay(from)
        : DateOf(from).Year == DateOf(to).Year && DateOf(from).Month == DateOf(to).Month ? $"{Format(from, "%d")} to {ShortDay(to)}"
        : DateOf(from).Year == DateOf(to).Year ? $"{Format(from, "d MMM")} to {ShortDay(to)}"
        : $"{ShortDay(from)} to {ShortDay(to)}";

    /// <summary>A temperature without its unit, to 0.1 °.</summary>
    public string Temperature(double? temperatureC) => Bare(degrees.Temperature(temperatureC));

    /// <summary>A signed difference without its unit, to 0.1 °.</summary>
    public string Difference(double? differenceC) => Bare(degrees.Difference(differenceC));

    /// <summary>A margin with its uncertainty, without the unit, for example <c>+3.9 ± 0.8</c>.</summary>
    public string Margin(CoatMoment? moment) => moment?.BlushMarginC is null ? DegreeText.Unknown
        : moment.MarginUncertaintyC is { } uncertainty ? $"{Difference(moment.BlushMarginC)}{NoBreak}{Bare(degrees.Uncertainty(uncertainty))}"
        : Difference(moment.BlushMarginC);

    public static string Percent(double? pct) => Bare(DegreeText.Percent(pct));

    /// <summary>What was in the cup, for example <c>1 nitrocellulose lacquer to 4 ordinary thinner, 2 % 2-butoxyethanol</c>.</summary>
    public static string Mix(CoatMix mix) => DegreeText.Tie(string.Create(
        CultureInfo.InvariantCulture,
        $"{mix.LacquerParts:0.##} {mix.Lacquer}{(mix.ThinnerParts > 0 ? $" to {mix.ThinnerParts:0.##} {mix.Thinner}" : ", not thinned")}, {(mix.RetarderPct > 0 ? $"{mix.RetarderPct:0.##} % {mix.Retarder}" : "no retarder")}"));

    /// <summary>All that a finisher marks of a coat, for a correction.</summary>
    public string Coat(CoatDetails details) => string.Create(
        CultureInfo.InvariantCulture,
        $"{details.Kind.Word()} coat, {Clock(details.Start)} to {(details.Stop is { } stop ? Clock(stop) : "an end that nobody marked")}, {Mix(details.Mix)}, {details.WetFilmUm:0.#}{NoBreak}µm wet on {details.Substrate}, air {details.AirSpeedMPerS:0.##}{NoBreak}m/s");

    public static string Least(AirSpan? span, Func<double?, string> write) => span is null ? DegreeText.Unknown
        : write(span.Min) == write(span.Max) ? write(span.Min)
        : $"{write(span.Min)} to {write(span.Max)}";

    private static string Bare(string text) => text.Replace(NoBreak + "°C", "", StringComparison.Ordinal).Replace(NoBreak + "°F", "", StringComparison.Ordinal).Replace(NoBreak + "%", "", StringComparison.Ordinal);

    private string Offset(DateTimeOffset time)
    {
        TimeSpan offset = zone.GetUtcOffset(time);
        return offset == TimeSpan.Zero ? "UTC" : $"UTC{(offset < TimeSpan.Zero ? '−' : '+')}{offset:hh\\:mm}";
    }

    private string Format(DateTimeOffset time, string format) => TimeZoneInfo.ConvertTime(time, zone).ToString(format, CultureInfo.InvariantCulture);
}
