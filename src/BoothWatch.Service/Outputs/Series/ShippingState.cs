namespace BoothWatch.Service.Outputs.Series;

/// <summary>How far one table has been shipped.</summary>
/// <param name="Waiting">Rows that still wait.</param>
/// <param name="Oldest">Time of the oldest of them, UTC; null when none waits.</param>
/// <param name="Missed">Rows that were cleared from the journal before their turn, ever.</param>
/// <param name="SetAside">Rows that the receiver refused, kept with the reason.</param>
public sealed record ShippingState(long Waiting, DateTimeOffset? Oldest, long Missed, long SetAside)
{
    /// <summary>The state of a journal that has not been written yet.</summary>
    public static ShippingState None { get; } = new(0, null, 0, 0);
}
