namespace BoothWatch.Service.Jobs;

/// <summary>Jobs and coats: the button at the booth and the demo's past.</summary>
public sealed class JobsOptions
{
    /// <summary>Section of the configuration.</summary>
    public const string Section = "jobs";

    /// <summary>GPIO of a push button that marks a coat and, pressed again, ends it; null for none. Default none, 0 to 53.</summary>
    public int? ButtonPin { get; set; }

    /// <summary>Where the button is: <c>emulated</c> or <c>real</c>. Default emulated.</summary>
    public string ButtonSource { get; set; } = "emulated";

    /// <summary>True when the button pulls the pin up; default false: it pulls the pin to ground, and the pull-up of the board is used.</summary>
    public bool ButtonActiveHigh { get; set; }

    /// <summary>How long the contact must rest before a press counts, ms. Default 50, 5 to 500.</summary>
    public double ButtonDebounceMs { get; set; } = 50;

    /// <summary>Schedule that a new job gets when none is named; null: none. Default <c>touch-up</c>.</summary>
    public string? DefaultSchedule { get; set; } = "touch-up";

    /// <summary>True: a new demo journal is given a few invented past jobs, marked as demo. Real journals never are. Default true.</summary>
    public bool DemoPast { get; set; } = true;
}
