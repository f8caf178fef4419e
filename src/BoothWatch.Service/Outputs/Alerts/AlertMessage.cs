using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Serialization;
using BoothWatch.Alerts;

namespace BoothWatch.Service.Outputs.Alerts;

/// <summary>One message, the same for every channel. It lies in the outbox as JSON.</summary>
public sealed record AlertMessage
{
    /// <summary>Id of the message, the same at every attempt and on every channel: who has it has the message.</summary>
    public required string Id { get; init; }

    /// <summary>Id of the alert that it is about; the all-clear has that of its alert.</summary>
    public required string Alert { get; init; }

    /// <summary>What it is.</summary>
    public required AlertMessageType Type { get; init; }

    /// <summary>Kind of the alert; null for a test.</summary>
    public AlertKind? Kind { get; init; }

    /// <summary>What the alert is about; a later message of the same key takes the place of this one.</summary>
    public required string Key { get; init; }

    /// <summary>How much it presses.</summary>
    public AlertLevel Level { get; init; }

    /// <summary>Name of the shop.</summary>
    public required string Shop { get; init; }

    /// <summary>Name of the booth.</summary>
    public required string Booth { get; init; }

    /// <summary>The message in a few words.</summary>
    public required string Title { get; init; }

    /// <summary>What was found.</summary>
    public required string Finding { get; init; }

    /// <summary>What to do; may be empty.</summary>
    public required string Action { get; init; }

    /// <summary>When the alert began, UTC.</summary>
    public required DateTimeOffset Began { get; init; }

    /// <summary>When the message was written, UTC.</summary>
    public required DateTimeOffset Time { get; init; }

    /// <summary>When it is no news any more, UTC.</summary>
    public required DateTimeOffset Expires { get; init; }

    /// <summary>What it would replace: 32 letters of base64url (RFC 8030, 5.4), the same for all messages of a key.</summary>
    [JsonIgnore]
    public string Topic => Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes($"{Shop}/{Booth}/{Key}")).AsSpan(0, 24))
        .Replace('+', '-').Replace('/', '_');

    /// <summary>The finding and the action as one text.</summary>
    [JsonIgnore]
    public string Text => Action.Length > 0 ? $"{Finding}. Do: {Action}." : $"{Finding}.";

    /// <summary>How long it is news still by the monotonic clock, as the dispatcher says when it sends; null while it does not wait there.</summary>
    [JsonIgnore]
    public TimeSpan? Left { get; init; }

    /// <summary>How long it is news from a moment on; zero once it is none.</summary>
    /// <param name="now">The moment by the wall clock, which counts only where <see cref="Left"/> is not known.</param>
    public TimeSpan LeftAt(DateTimeOffset now) => Left ?? (Expires > now ? Expires - now : TimeSpan.Zero);
}
