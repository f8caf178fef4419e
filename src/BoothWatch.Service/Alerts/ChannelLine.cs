namespace BoothWatch.Service.Alerts;

/// <summary>How a channel fares, as the page shows it.</summary>
/// <param name="Name">Its name.</param>
/// <param name="On">True while it is used.</param>
/// <param name="OffBecause">Why it is off, and how to switch it on; null while it is on.</param>
/// <param name="Receivers">How many it goes to.</param>
/// <param name="Waiting">Messages that wait.</param>
/// <param name="LastSuccess">When the last message was handed over, UTC; null when none was.</param>
/// <param name="LastError">The last error; null when there was none. Stays after a success.</param>
/// <param name="LastErrorTime">When that was, UTC.</param>
public sealed record ChannelLine(
    string Name, bool On, string? OffBecause, int Receivers, long Waiting, DateTimeOffset? LastSuccess, string? LastError, DateTimeOffset? LastErrorTime);
