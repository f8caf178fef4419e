namespace BoothWatch.Service.Limits;

/// <summary>The shop's own limit: whether it holds, and within what bounds.</summary>
public sealed class LimitOptions
{
    /// <summary>Section of the configuration.</summary>
    public const string Section = "limit";

    /// <summary>True: the limit takes the place of <c>verdict:requiredMarginC</c>. Default false: it is only shown.</summary>
    public bool Enabled { get; set; }

    /// <summary>The limit never falls below this, °C. Default 0.2, 0 to <c>verdict:requiredMarginC</c>.</summary>
    public double FloorC { get; set; } = 0.2;

    /// <summary>The limit never rises above this, °C. Default 3, <c>verdict:requiredMarginC</c> to 10.</summary>
    public double CeilingC { get; set; } = 3;

    /// <summary>It falls only with so many coats marked as not blushed. Default 20, 10 to 1000.</summary>
    public int LeastCoats { get; set; } = 20;

    /// <summary>It falls only with such coats closer than the settings want on so many days. Default 5, 2 to 100.</summary>
    public int LeastCloseDays { get; set; } = 5;

    /// <summary>It falls only when so many of all coats are marked as not blushed, %. Default 50, 10 to 100.</summary>
    public double LeastJudgedPct { get; set; } = 50;

    /// <summary>It rises only with so many coats that blushed though the model said they would hold. Default 2, 2 to 20.</summary>
    public int LeastBlushed { get; set; } = 2;

    /// <summary>Coats of so many days count. Default 365, 30 to 3660.</summary>
    public double WindowDays { get; set; } = 365;

    /// <summary>Coats before this day do not count, for example because the sensor was replaced: <c>yyyy-MM-dd</c>, or empty. Default empty.</summary>
    public string Since { get; set; } = "";
}
