using System.Globalization;
using System.Text.Json;

namespace BoothWatch.Service.Outputs.Mqtt.Homie;

/// <summary>Values as the Homie convention 5 writes them.</summary>
internal static class HomiePayload
{
    /// <summary>A float, to a thousandth; null for what is no number.</summary>
    public static string? Of(double? value) => value is { } number && double.IsFinite(number)
        ? (Math.Round(number, 3) + 0.0).ToString("0.###", CultureInfo.InvariantCulture)
        : null;

    public static string Of(bool value) => value ? "true" : "false";

    /// <summary>A time in UTC (RFC 3339, which is ISO 8601 as well).</summary>
    public static string Of(DateTimeOffset time) => time.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture);

    /// <summary>An enumeration as a kebab-case word.</summary>
    public static string Word<T>(T value)
        where T : struct, Enum => JsonNamingPolicy.KebabCaseLower.ConvertName(value.ToString());

    /// <summary>The format of an enumeration: all its words.</summary>
    public static string Words<T>()
        where T : struct, Enum => string.Join(',', Enum.GetValues<T>().Select(Word));
}
