namespace BoothWatch.Service.Outputs.Alerts;

/// <summary>Quiet hours, <c>alerts:quietHours</c>.</summary>
public sealed class QuietHoursOptions
{
    /// <summary>When they begin by the clock of this machine, hh:mm. Default empty: none. 00:00 to 23:59.</summary>
    public string From { get; set; } = "";

    /// <summary>When they end, hh:mm; the next day when it is earlier. Default empty: none. 00:00 to 23:59.</summary>
    public string To { get; set; } = "";

    /// <summary>Kinds that are told all the same, with commas between: verdict-worse, margin-closing, sensors-lost, timer-due, soft-film, piece-warm. Default verdict-worse; empty for none.</summary>
    public string BreakThrough { get; set; } = "verdict-worse";
}
