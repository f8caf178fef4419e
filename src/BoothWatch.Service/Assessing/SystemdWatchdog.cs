using Microsoft.Extensions.Hosting.Systemd;

namespace BoothWatch.Service.Assessing;

/// <summary>
/// Feeds the watchdog of systemd, and only the assessment loop feeds it, while the light is alive: when either hangs, systemd kills
/// and restarts the service. Outside systemd it does nothing.
/// </summary>
public sealed class SystemdWatchdog(ISystemdNotifier? notifier = null)
{
    private static readonly ServiceState Alive = new("WATCHDOG=1");

    /// <summary>Says that the loop has completed a tick.</summary>
    public void Feed()
    {
        if (notifier is { IsEnabled: true })
        {
            notifier.Notify(Alive);
        }
    }
}
