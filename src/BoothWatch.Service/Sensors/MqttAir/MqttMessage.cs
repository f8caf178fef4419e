using System.Globalization;
using System.Text;
using System.Text.Json;

namespace BoothWatch.Service.Sensors.MqttAir;

/// <summary>What one message says: a number and, where it is sent, its time; or why it says nothing.</summary>
internal sealed record MqttMessage(double Value, DateTimeOffset? Sent, string? Fault)
{
    private const int LongestPayload = 65_536;

    /// <summary>Reads a message.</summary>
    public static MqttMessage Read(ReadOnlyMemory<byte> payload, MqttValueOptions options)
    {
        if (payload.Length > LongestPayload)
        {
            return Bad($"is {payload.Length} bytes long, more than {LongestPayload}");
        }

        if (options.ValuePointer.Length == 0 && options.TimePointer.Length == 0)
        {
            return ReadPlain(payload.Span);
        }

        try
        {
            using JsonDocument document = JsonDocument.Parse(payload);
            if (JsonPointer.Find(document.RootElement, options.ValuePointer) is not { } found || NumberIn(found) is not { } value)
            {
                return Bad($"has no number at {(options.ValuePointer.Length == 0 ? "its root" : options.ValuePointer)}");
            }

            if (options.TimePointer.Length == 0)
            {
                return new MqttMessage(value, null, null);
            }

            return JsonPointer.Find(document.RootElement, options.TimePointer) is { } at && TimeIn(at) is { } sent
                ? new MqttMessage(value, sent, null)
                : Bad($"has no time at {options.TimePointer}");
        }
        catch (JsonException)
        {
            return Bad("is not JSON");
        }
    }

    private static MqttMessage ReadPlain(ReadOnlySpan<byte> payload)
    {
        string text = Encoding.UTF8.GetString(payload).Trim();
        return Number(text) is { } value ? new MqttMessage(value, null, null) : Bad($"is \"{Short(text)}\", not a number");
    }

    private static double? NumberIn(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.Number when element.TryGetDouble(out double number) && double.IsFinite(number) => number,
        JsonValueKind.String => Number(element.GetString()!),
        _ => null,
    };

    private static double? Number(string text) =>
        double.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent, CultureInfo.InvariantCulture, out double number)
        && double.IsFinite(number)
            ? number
            : null;

    private static DateTimeOffset? TimeIn(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.String when DateTimeOffset.TryParse(
            element.GetString(), CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out DateTimeOffset time) => time,

        // Up to the year 9999.
        JsonValueKind.Number when element.TryGetDouble(out double seconds) && seconds is >= 0 and < 253_402_300_800 =>
            DateTimeOffset.UnixEpoch.AddSeconds(seconds),
        _ => null,
    };

    private static string Short(string text) => text.Length <= 20 ? text : text[..20] + "...";

    private static MqttMessage Bad(string fault) => new(0, null, fault);
}
