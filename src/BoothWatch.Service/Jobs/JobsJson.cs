using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;
using BoothWatch.Service.Page;

namespace BoothWatch.Service.Jobs;

/// <summary>How jobs are written as JSON: as on the page, with times in UTC and Z.</summary>
internal static class JobsJson
{
    public static JsonSerializerOptions Options { get; } = PageJson.Apply(new JsonSerializerOptions(JsonSerializerDefaults.Web) { Converters = { new UtcTimes() } });

    private sealed class UtcTimes : JsonConverter<DateTimeOffset>
    {
        public override DateTimeOffset Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            reader.GetDateTimeOffset();

        public override void Write(Utf8JsonWriter writer, DateTimeOffset value, JsonSerializerOptions options) =>
            writer.WriteStringValue(value.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.FFF'Z'", CultureInfo.InvariantCulture));
    }
}
