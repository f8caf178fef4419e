namespace BoothWatch.Service.Setup;

/// <summary>One place on a bus that something was found at, or that is configured.</summary>
/// <param name="Bus">Number of the bus: n of <c>/dev/i2c-n</c>.</param>
/// <param name="Address">The address in hexadecimal.</param>
/// <param name="Source">real or emulated.</param>
/// <param name="Part">Kind of part in the configuration; null when it is none that is known here.</param>
/// <param name="ConfiguredAs">The sensor that is configured here; null when none is.</param>
/// <param name="Finding">What was found, for people.</param>
/// <param name="IsGood">Whether it answers as it should.</param>
/// <param name="Roles">What the part can measure: names of the section <c>sensors</c>.</param>
/// <param name="Line">The line to put into the section <c>sensors</c> of the configuration; null when there is nothing to add.</param>
public sealed record ScanLine(
    int Bus, string Address, string Source, string? Part, string? ConfiguredAs, string Finding, bool IsGood, IReadOnlyList<string> Roles, string? Line);
