namespace BoothWatch.Service.Outlook;

/// <summary>The outlook: how far it looks back, and when the working day ends.</summary>
public sealed class OutlookOptions
{
    /// <summary>Section of the configuration.</summary>
    public const string Section = "outlook";

    /// <summary>False: no outlook is worked out. Default true.</summary>
    public bool Enabled { get; set; } = true;

    /// <summary>Days looked back: each earlier day is one way for today to go on. Default 30, 15 to 120.</summary>
    public int WindowDays { get; set; } = 30;

    /// <summary>End of the working day in the shop, <c>hh:mm</c>. Default 18:00, 00:30 to 23:59.</summary>
    public string DayEndsAt { get; set; } = "18:00";

    /// <summary>Minutes between two outlooks. Default 5, 1 to 60.</summary>
    public double EveryMinutes { get; set; } = 5;

    /// <summary>True: while the booth air is emulated, the outlook rests on invented days of the scripted shop, and says so. Default true.</summary>
    public bool DemoPast { get; set; } = true;
}
