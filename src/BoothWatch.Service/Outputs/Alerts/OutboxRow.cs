namespace BoothWatch.Service.Outputs.Alerts;

/// <summary>A message on its way to one target of one channel.</summary>
/// <param name="Id">Number of the row.</param>
/// <param name="Channel">Name of the channel.</param>
/// <param name="Target">The target.</param>
/// <param name="NotBefore">When it may leave, UTC.</param>
/// <param name="Message">The message.</param>
internal sealed record OutboxRow(long Id, string Channel, string Target, DateTimeOffset NotBefore, AlertMessage Message)
{
    /// <summary>Name of its place in the queue.</summary>
    public (string Channel, string Target) Lane => (Channel, Target);

    /// <summary>True when it was written to leave later, as an all-clear in quiet hours; else a clock that is set back may not hold it.</summary>
    public bool IsHeld => NotBefore > Message.Time;
}
