namespace BoothWatch.Alerts;

/// <summary>How much an alert presses.</summary>
public enum AlertLevel
{
    /// <summary>Good to know.</summary>
    Notice,

    /// <summary>Look at it soon.</summary>
    Warning,

    /// <summary>Act now.</summary>
    Urgent,
}
