using System.Globalization;
using System.Text.Json;
using System.Threading.Channels;

namespace BoothWatch.Service.Outputs.Mqtt;

/// <summary>
/// Where commands come in. The list of names is closed; what is late, repeated or unknown is refused, counted and, now and then,
/// logged. A command can never switch a fan, a heater or the light: what obeys one marks something, and nothing else.
/// </summary>
internal sealed partial class CommandIntake(
    MqttTopics topics, TimeProvider time, ILogger<CommandIntake> logger, IEnumerable<IMqttCommand>? commands = null) : IMqttSubscriber
{
    /// <summary>Longest payload, bytes.</summary>
    public const int LongestPayload = 4096;

    /// <summary>Most commands taken within the time that an id is remembered.</summary>
    public const int MostTaken = 60;

    /// <summary>The documented commands.</summary>
    public static readonly IReadOnlyList<string> Names = ["acknowledge-alert", "mark-coat"];

    private const int LongestId = 64;
    private static readonly TimeSpan Timely = TimeSpan.FromMinutes(1);

    // A command from a clock a minute ahead is timely for two minutes.
    private static readonly TimeSpan Remembered = (2 * Timely) + TimeSpan.FromSeconds(10);

    private readonly IMqttCommand[] _commands = [.. commands ?? []];
    private readonly long[] _refused = new long[Enum.GetValues<CommandRefusal>().Length];
    private readonly Dictionary<string, long> _taken = new(StringComparer.Ordinal);
    private readonly Channel<ArrivedCommand> _arrived = Channel.CreateBounded<ArrivedCommand>(2 * MostTaken);

    /// <inheritdoc/>
    public IReadOnlyList<MqttWish> Wishes { get; } = [new($"{topics.Command}/#", QueueWhileAway: false, MarkSentRetained: true)];

    /// <summary>Commands to obey, and refusals to answer, in order.</summary>
    public ChannelReader<ArrivedCommand> Arrived => _arrived.Reader;

    /// <summary>Commands refused for a reason since the start.</summary>
    public long Refused(CommandRefusal why) => Interlocked.Read(ref _refused[(int)why]);

    /// <inheritdoc/>
    public void Take(MqttArrival arrival)
    {
        string name = arrival.Topic[Math.Min(topics.Command.Length + 1, arrival.Topic.Length)..];
        ArrivedCommand command = Judge(name, arrival);
        if (command.Why is { } why)
        {
            CountRefusal(name, why);
        }

        // Of a repetition the sender has the answer already, or will have it.
        if (command.Why is not CommandRefusal.Repeated && !_arrived.Writer.TryWrite(command) && command.Why is null)
        {
            CountRefusal(name, CommandRefusal.TooMany);
        }
    }

    /// <summary>Counts a command as refused and, the 1st, 10th, 100th time, logs it: enough to notice, too few to fill a disk.</summary>
    public void CountRefusal(string name, CommandRefusal why)
    {
        long count = Interlocked.Increment(ref _refused[(int)why]);
        if (Math.Log10(count) % 1 == 0)
        {
            string words = MqttTrouble.Words(why);
            LogRefused($"{topics.Command}/{name}", words, count);
        }
    }

    private ArrivedCommand Judge(string name, MqttArrival arrival)
    {
        CommandRefusal? unread = arrival switch
        {
            { IsRetained: true } => CommandRefusal.Retained,
            _ when !Names.Contains(name) => CommandRefusal.Unknown,
            { Payload.Length: > LongestPayload } => CommandRefusal.TooLong,
            _ => null,
        };
        if (unread is not null || Read(arrival.Payload) is not { } read)
        {
            return new ArrivedCommand(name, null, default, null, unread ?? CommandRefusal.Malformed);
        }

        IMqttCommand? obeys = _commands.FirstOrDefault(command => command.Name == name);
        CommandRefusal? why =
            (time.GetUtcNow() - read.Sent).Duration() > Timely ? CommandRefusal.Stale
            : obeys is null ? CommandRefusal.NotObeyedYet
            : Remember(read.Id);
        return new ArrivedCommand(name, read.Id, read.Payload, obeys, why);
    }

    private CommandRefusal? Remember(string id)
    {
        lock (_taken)
        {
            foreach (string old in _taken.Where(taken => time.GetElapsedTime(taken.Value) > Remembered).Select(taken => taken.Key).ToList())
            {
                _taken.Remove(old);
            }

            if (_taken.ContainsKey(id))
            {
                return CommandRefusal.Repeated;
            }

            if (_taken.Count >= MostTaken)
            {
                return CommandRefusal.TooMany;
            }

            _taken.Add(id, time.GetTimestamp());
            return null;
        }
    }

    private static (string Id, DateTimeOffset Sent, JsonElement Payload)? Read(ReadOnlyMemory<byte> payload)
    {
        try
        {
            using JsonDocument document = JsonDocument.Parse(payload);
            return document.RootElement.ValueKind == JsonValueKind.Object
                && document.RootElement.TryGetProperty("id", out JsonElement id)
                && id.ValueKind == JsonValueKind.String && id.GetString() is { Length: >= 1 and <= LongestId } text
                && document.RootElement.TryGetProperty("time", out JsonElement sent)
                && sent.ValueKind == JsonValueKind.String
                && DateTimeOffset.TryParse(sent.GetString(), CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out DateTimeOffset at)
                    ? (text, at, document.RootElement.Clone())
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
