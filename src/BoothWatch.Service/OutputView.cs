using System.Globalization;
using BoothWatch.Service.Access;
using BoothWatch.Service.Outputs.Light;
using BoothWatch.Service.Outputs.Pump;
using BoothWatch.Service.Page;
using BoothWatch.Verdicts;

namespace BoothWatch.Service;

/// <summary>How the light and the outputs fare, as the page shows it; here, because the page may not know them.</summary>
internal static class OutputView
{
    public static OutputLine LineOf(BoothLight light)
    {
        LightHealth health = light.Health;
        return health switch
        {
            _ when !light.IsAlive => new OutputLine("light", false, "hangs in a write to a pin and may show an old verdict: restart BoothWatch"),
            { Faulty: true } => new OutputLine("light", false, $"shows wait where it can: {health.LastFault}"),
            { LoopSilent: true } => new OutputLine("light", false, "shows wait: the loop is silent"),
            _ => new OutputLine("light", true, $"shows {health.Shown.Word()}"),
        };
    }

    public static OutputLine LineOf(OutputHealth health) => new(
        health.Name,
        !health.IsFailing,
        (string.Join(", ", Figures(health)), health.IsFailing) switch
        {
            ("", false) => "working",
            ("", true) => health.LastError ?? "",
            (var figures, false) => figures,
            (var figures, true) => $"{figures}: {health.LastError}",
        });

    /// <summary>Whatever is above zero, in few words: the line has to fit one row of a tablet. Whether it works stands before it.</summary>
    private static IEnumerable<string> Figures(OutputHealth health)
    {
        if (health.Queued > 0)
        {
            yield return health.OldestWaiting is { } age ? $"{health.Queued} waiting for {AgeText(age)}" : $"{health.Queued} waiting";
        }

        if (health.SetAside > 0)
        {
            yield return $"{health.SetAside} set aside";
        }

        if (health.Dropped > 0)
        {
            yield return $"{health.Dropped} lost";
        }
    }

    public static OutputStatus StatusOf(BoothLight light)
    {
        LightHealth health = light.Health;
        return new OutputStatus
        {
            Name = "light",
            Working = light.IsAlive && health is { Faulty: false, LoopSilent: false },
            LastError = health.LastFault,
        };
    }

    /// <summary>None where the page is served without TLS.</summary>
    public static OutputLine[] LineOf(ServerCertificate certificate) =>
        certificate.Finding is { } finding ? [new OutputLine("certificate", finding.Good, finding.Words)] : [];

    /// <summary>None where the page is served without TLS.</summary>
    public static OutputStatus[] StatusOf(ServerCertificate certificate) =>
        certificate.Finding is { } finding ? [new OutputStatus { Name = "certificate", Working = finding.Good, LastError = finding.Good ? null : finding.Words }] : [];

    public static OutputStatus StatusOf(OutputHealth health) => new()
    {
        Name = health.Name,
        Working = !health.IsFailing,
        Handled = health.Handled,
        Dropped = health.Dropped,
        Superseded = health.Superseded,
        SetAside = health.SetAside,
        Failures = health.Failures,
        Backlog = health.Queued,
        BacklogAgeS = health.OldestWaiting is { } age ? Math.Round(age.TotalSeconds, 1) : null,
        LastSuccess = health.LastSuccess?.UtcDateTime,
        LastError = health.LastError,
        LastErrorTime = health.LastErrorTime?.UtcDateTime,
    };

    private static string AgeText(TimeSpan age) => age switch
    {
        { TotalSeconds: < 100 } => string.Create(CultureInfo.InvariantCulture, $"{Math.Max(0, age.TotalSeconds):0} s"),
        { TotalMinutes: < 100 } => string.Create(CultureInfo.InvariantCulture, $"{age.TotalMinutes:0} min"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{age.TotalHours:0} h"),
    };
}
