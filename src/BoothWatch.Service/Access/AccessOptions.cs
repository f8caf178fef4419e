namespace BoothWatch.Service.Access;

/// <summary>Who may read and change what, beyond this machine (<c>access</c> in the configuration). The shared secret is no setting: the command <c>access set-secret</c> keeps it.</summary>
public sealed class AccessOptions
{
    /// <summary>Name of the section.</summary>
    public const string Section = "access";

    /// <summary>What reading needs from another machine: <c>secret</c> (default) or <c>open</c>. Every change needs a signed-in session all the same.</summary>
    public ReadingAccess Reading { get; set; } = ReadingAccess.Secret;

    /// <summary>
    /// Names by which the page may be asked for, for example <c>booth.example</c>. Addresses, <c>localhost</c>, the name of the machine
    /// (also with <c>.local</c>) and the names in the certificate are known without it. Default none.
    /// </summary>
    public string[] Hosts { get; set; } = [];

    /// <summary>
    /// Addresses or networks of reverse proxies whose <c>X-Forwarded-For</c>, <c>-Proto</c> and <c>-Host</c> are believed, for example
    /// <c>192.0.2.10</c> or <c>192.0.2.0/28</c>. Default none. Whoever comes from such an address never counts as this machine.
    /// </summary>
    public string[] Proxies { get; set; } = [];

    /// <summary>A session that is not used for so long ends, h. Default 72, range 0.25 to 720.</summary>
    public double SessionIdleH { get; set; } = 72;

    /// <summary>A session ends so long after its sign-in, used or not, days. Default 90, range 1 to 366.</summary>
    public double SessionLongestDays { get; set; } = 90;
}
