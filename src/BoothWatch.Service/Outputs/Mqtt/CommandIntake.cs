using System.Globalization;
using System.Text.Json;

namespace BoothWatch.Service.Outputs.Mqtt;

/// <summary>
/// Where commands come in. The list of names is closed, and nothing on it is obeyed yet: every command is refused, counted
/// and, now and then, logged. A command can never switch anything, since nothing here reaches the booth.
/// </summary>
internal sealed partial class CommandIntake(MqttTopics topics, TimeProvider time, ILogger<CommandIntake> logger) : IMqttSubscriber
{
    /// <summary>Longest payload, bytes.</summary>
    public const int LongestPayload = 4096;

    /// <summary>The documented commands.</summary>
    public static readonly IReadOnlyList<string> Names = ["acknowledge-alert", "mark-coat"];

    private const int LongestId = 64;
    private static readonly TimeSpan Timely = TimeSpan.FromMinutes(1);

    private readonly long[] _refused = new long[Enum.GetValues<CommandRefusal>().Length];

    /// <inheritdoc/>
    public IReadOnlyList<MqttWish> Wishes { get; } = [new($"{topics.Command}/#", QueueWhileAway: false, MarkSentRetained: true)];

    /// <summary>Commands refused for a reason since the start.</summary>
    public long Refused(CommandRefusal why) => Interlocked.Read(ref _refused[(int)why]);

    /// <inheritdoc/>
    public void Take(MqttArrival arrival)
    {
        CommandRefusal why = Judge(arrival);
        long count = Interlocked.Increment(ref _refused[(int)why]);

        // The 1st, 10th, 100th, ...: enough to notice, too few to fill a disk.
        if (Math.Log10(count) % 1 == 0)
        {
            string words = MqttTrouble.Words(why);
            LogRefused(arrival.Topic, words, count);
        }
    }

    private CommandRefusal Judge(MqttArrival arrival) => arrival switch
    {
        { IsRetained: true } => CommandRefusal.Retained,
        _ when !Names.Contains(arrival.Topic[Math.Min(topics.Command.Length + 1, arrival.Topic.Length)..]) => CommandRefusal.Unknown,
        { Payload.Length: > LongestPayload } => CommandRefusal.TooLong,
        _ => TimeOf(arrival.Payload) switch
        {
            null => CommandRefusal.Malformed,
            { } sent when (time.GetUtcNow() - sent).Duration() > Timely => CommandRefusal.Stale,
            _ => CommandRefusal.NotObeyedYet,
        },
    };

    private static DateTimeOffset? TimeOf(ReadOnlyMemory<byte> payload)
    {
        try
        {
            using JsonDocument document = JsonDocument.Parse(payload);
            return document.RootElement.ValueKind == JsonValueKind.Object
                && document.RootElement.TryGetProperty("id", out JsonElement id)
                && id.ValueKind == JsonValueKind.String && id.GetString() is { Length: >= 1 and <= LongestId }
                && document.RootElement.TryGetProperty("time", out JsonElement sent)
                && sent.ValueKind == JsonValueKind.String
                && DateTimeOffset.TryParse(sent.GetString(), CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out DateTimeOffset at)
                    ? at
                    : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    [LoggerMessage(EventId = 1, Level = LogLevel.Warning, Message = "Refused a command on {Topic}: {Why} ({Count} such since the start)")]
    private partial void LogRefused(string topic, string why, long count);
}
