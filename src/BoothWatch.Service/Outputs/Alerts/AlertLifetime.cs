using BoothWatch.Alerts;

namespace BoothWatch.Service.Outputs.Alerts;

/// <summary>How long a message is news; after that it is set aside, never delivered. Own choices.</summary>
internal static class AlertLifetime
{
    /// <summary>Of a test.</summary>
    public static readonly TimeSpan Test = TimeSpan.FromMinutes(5);

    /// <summary>Of an alert.</summary>
    public static TimeSpan Of(AlertKind kind) => kind switch
    {
        AlertKind.PieceWarm => TimeSpan.FromMinutes(15),
        AlertKind.VerdictWorse or AlertKind.MarginClosing => TimeSpan.FromMinutes(10),
        AlertKind.SensorsLost => TimeSpan.FromHours(1),
        AlertKind.SoftFilm => TimeSpan.FromHours(1),
        _ => TimeSpan.FromHours(12),
    };

    /// <summary>Of the all-clear after it.</summary>
    public static TimeSpan OfClear(AlertKind kind) => kind == AlertKind.VerdictWorse ? TimeSpan.FromMinutes(30) : Of(kind);
}
