namespace BoothWatch.Alerts;

/// <summary>How the kinds of alert are written: page, JSON, journal, configuration and messages.</summary>
public static class AlertWords
{
    /// <summary>Every kind by its word.</summary>
    public static IReadOnlyDictionary<string, AlertKind> Kinds { get; } =
        Enum.GetValues<AlertKind>().ToDictionary(kind => kind.Word(), StringComparer.Ordinal);

    /// <summary>The word of a kind, for example <c>verdict-worse</c>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such kind.</exception>
    public static string Word(this AlertKind kind) => kind switch
    {
        AlertKind.VerdictWorse => "verdict-worse",
        AlertKind.MarginClosing => "margin-closing",
        AlertKind.SensorsLost => "sensors-lost",
        AlertKind.TimerDue => "timer-due",
        AlertKind.SoftFilm => "soft-film",
        AlertKind.PieceWarm => "piece-warm",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "There is no such kind of alert."),
    };
}
