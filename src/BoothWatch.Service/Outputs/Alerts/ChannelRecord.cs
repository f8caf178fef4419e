namespace BoothWatch.Service.Outputs.Alerts;

/// <summary>How a channel has fared, as the outbox shows it.</summary>
/// <param name="Waiting">Messages that wait.</param>
/// <param name="LastSuccess">When the last message was handed over, UTC; null when none was.</param>
/// <param name="LastError">The last error in words; null when there was none. Stays after a success.</param>
/// <param name="LastErrorTime">When that was, UTC.</param>
internal sealed record ChannelRecord(long Waiting, DateTimeOffset? LastSuccess, string? LastError, DateTimeOffset? LastErrorTime);
