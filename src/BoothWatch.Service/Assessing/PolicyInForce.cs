using BoothWatch.Verdicts;

namespace BoothWatch.Service.Assessing;

/// <summary>
/// The limits that hold now: those of the settings, until the shop's own limit takes the place of the required margin. Reading is a
/// read of one reference, so that the loop never waits. Safe for several threads.
/// </summary>
/// <param name="configured">The limits of the settings.</param>
public sealed class PolicyInForce(VerdictPolicy configured)
{
    private volatile VerdictPolicy _current = configured;

    /// <summary>The limits of the settings.</summary>
    public VerdictPolicy Configured { get; } = configured;

    /// <summary>The limits that hold now.</summary>
    public VerdictPolicy Current => _current;

    /// <summary>Puts limits in force, from the next assessment on.</summary>
    internal void Set(VerdictPolicy policy) => _current = policy;
}
