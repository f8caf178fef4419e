using System.Globalization;
using BoothWatch.Alerts;
using BoothWatch.Readings;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Outputs.Alerts;

/// <summary>Reads the limits of the rules out of the options.</summary>
internal static class AlertLimitsReader
{
    public static AlertLimits Of(AlertsOptions options, VerdictPolicy policy, IEnumerable<Quantity> typedByHand) => new()
    {
        SessionFor = TimeSpan.FromMinutes(options.SessionMinutes),
        MarginLeft = TimeSpan.FromMinutes(options.MarginMinutesLeft),
        MarginWindow = TimeSpan.FromMinutes(options.MarginWindowMinutes),
        SensorsLostAfter = TimeSpan.FromSeconds(options.SensorsLostAfterS),
        ClearAfter = TimeSpan.FromSeconds(options.ClearAfterS),
        TellPieceWarm = options.PieceWarm,
        Policy = policy,
        Quiet = Time(options.QuietHours.From) is { } from && Time(options.QuietHours.To) is { } to ? new QuietHours(from, to) : null,
        BreakThrough = [.. Words(options.QuietHours.BreakThrough).Select(word => AlertWords.Kinds[word])],
        TypedByHand = [.. typedByHand],
    };

    public static TimeOnly? Time(string text) =>
        TimeOnly.TryParseExact(text, "HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out TimeOnly time) ? time : null;

    public static IEnumerable<string> Words(string list) => list.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
}
