namespace BoothWatch.Service.Assessing;

/// <summary>When the wall clock counts as proven. Section <c>clock</c>.</summary>
public sealed class ClockOptions
{
    /// <summary>Section of the configuration.</summary>
    public const string Section = "clock";

    /// <summary>
    /// True: before any verdict but wait the kernel must report the clock as synchronised (NTP, PTP, GNSS), or must have set it at
    /// boot from a battery clock with a plausible date, since a board without either starts at a date of its own and would file
    /// records under it. False: trust the clock as it is.
    /// </summary>
    /// <value>Default true. Not asked while every sensor is emulated.</value>
    public bool RequireSynchronised { get; set; } = true;
}
