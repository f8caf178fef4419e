using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Unicode;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Outputs.Mqtt;

/// <summary>How messages write JSON: camelCase names, the verdict in its words, other enumerations in kebab-case, times in UTC after RFC 3339, unknown figures as null.</summary>
internal static class MqttJson
{
    public static JsonSerializerOptions Options { get; } = new(JsonSerializerDefaults.Web)
    {
        Encoder = JavaScriptEncoder.Create(UnicodeRanges.All),
        NumberHandling = JsonNumberHandling.Strict,
        Converters = { new VerdictConverter(), new NumberConverter(), new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false) },
    };

    public static byte[] Write<T>(T document) => JsonSerializer.SerializeToUtf8Bytes(document, Options);

    /// <summary>What is no number is not known: JSON has no word for it.</summary>
    private sealed class NumberConverter : JsonConverter<double>
    {
        public override double Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => reader.GetDouble();

        public override void Write(Utf8JsonWriter writer, double value, JsonSerializerOptions options)
        {
            if (double.IsFinite(value))
            {
                writer.WriteNumberValue(value);
            }
            else
            {
                writer.WriteNullValue();
            }
        }
    }

    private sealed class VerdictConverter : JsonConverter<Verdict>
    {
        public override Verdict Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
        {
            string? word = reader.GetString();
            return Enum.GetValues<Verdict>().Cast<Verdict?>().FirstOrDefault(verdict => verdict!.Value.Word() == word)
                ?? throw new JsonException($"\"{word}\" is no verdict");
        }

        public override void Write(Utf8JsonWriter writer, Verdict value, JsonSerializerOptions options) => writer.WriteStringValue(value.Word());
    }
}
