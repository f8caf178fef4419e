using System.Globalization;
using System.Text.Json;

namespace BoothWatch.Service.Outputs.Mqtt;

/// <summary>
/// Where commands come in. The list of names is closed; what nothing obeys is refused, counted and, now and then, logged.
/// A command can never switch anything, since nothing here reaches the booth.
/// </summary>
internal sealed partial class CommandIntake(
    MqttTopics topics, TimeProvider time, ILogger<CommandIntake> logger, IEnumerable<IMqttCommand>? commands = null) : IMqttSubscriber
{
    /// <summary>Longest payload, bytes.</summary>
    public const int LongestPayload = 4096;

    /// <summary>The documented commands.</summary>
    public static readonly IReadOnlyList<string> Names = ["acknowledge-alert", "mark-coat"];

    private const int LongestId = 64;
    private static readonly TimeSpan Timely = TimeSpan.FromMinutes(1);

    private readonly IMqttCommand[] _commands = [.. commands ?? []];
    private readonly long[] _refused = new long[Enum.GetValues<CommandRefusal>().Length];

    /// <inheritdoc/>
    public IReadOnlyList<MqttWish> Wishes { get; } = [new($"{topics.Command}/#", QueueWhileAway: false, MarkSentRetained: true)];

    /// <summary>Commands refused for a reason since the start.</summary>
    public long Refused(CommandRefusal why) => Interlocked.Read(ref _refused[(int)why]);

    /// <inheritdoc/>
    public void Take(MqttArrival arrival)
    {
        if (Judge(arrival) is not { } why)
        {
            return;
        }

        long count = Interlocked.Increment(ref _refused[(int)why]);

        // The 1st, 10th, 100th, ...: enough to notice, too few to fill a disk.
        if (Math.Log10(count) % 1 == 0)
        {
            string words = MqttTrouble.Words(why);
            LogRefused(arrival.Topic, words, count);
        }
    }

    private CommandRefusal? Judge(MqttArrival arrival)
    {
        string name = arrival.Topic[Math.Min(topics.Command.Length + 1, arrival.Topic.Length)..];
        if (arrival.IsRetained)
        {
            return CommandRefusal.Retained;
        }

        if (!Names.Contains(name))
        {
            return CommandRefusal.Unknown;
        }

        return arrival.Payload.Length > LongestPayload ? CommandRefusal.TooLong : Judge(name, arrival.Payload);
    }

    private CommandRefusal? Judge(string name, ReadOnlyMemory<byte> payload)
    {
        try
        {
            using JsonDocument document = JsonDocument.Parse(payload);
            if (TimeOf(document.RootElement) is not { } sent)
            {
                return CommandRefusal.Malformed;
            }

            if ((time.GetUtcNow() - sent).Duration() > Timely)
            {
                return CommandRefusal.Stale;
            }

            IMqttCommand? command = _commands.FirstOrDefault(command => command.Name == name);
            return command is null ? CommandRefusal.NotObeyedYet
                : command.Obey(document.RootElement) ? null
                : CommandRefusal.Malformed;
        }
        catch (JsonException)
        {
            return CommandRefusal.Malformed;
        }
    }

    private static DateTimeOffset? TimeOf(JsonElement command) =>
        command.ValueKind == JsonValueKind.Object
        && command.TryGetProperty("id", out JsonElement id)
        && id.ValueKind == JsonValueKind.String && id.GetString() is { Length: >= 1 and <= LongestId }
        && command.TryGetProperty("time", out JsonElement sent)
        && sent.ValueKind == JsonValueKind.String
        && DateTimeOffset.TryParse(sent.GetString(), CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out DateTimeOffset at)
            ? at
            : null;

    [LoggerMessage(EventId = 1, Level = LogLevel.Warning, Message = "Refused a command on {Topic}: {Why} ({Count} such since the start)")]
    private partial void LogRefused(string topic, string why, long count);
}
