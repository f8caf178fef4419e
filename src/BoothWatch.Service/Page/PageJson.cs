using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Unicode;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Page;

/// <summary>How the page writes JSON: camelCase names, the verdict as <c>spray</c>, <c>slow down</c> or <c>wait</c>, other enumerations as kebab-case words, unknown figures as null.</summary>
public static class PageJson
{
    /// <summary>The options, also for the streams.</summary>
    public static JsonSerializerOptions Options { get; } = Apply(new JsonSerializerOptions(JsonSerializerDefaults.Web));

    /// <summary>How a value of an enumeration is written, for example <c>not-warming</c>; not for the verdict.</summary>
    public static string Word(Enum value) => JsonNamingPolicy.KebabCaseLower.ConvertName(value.ToString());

    /// <summary>Sets the options on another instance.</summary>
    public static JsonSerializerOptions Apply(JsonSerializerOptions options)
    {
        options.PropertyNamingPolicy = JsonNamingPolicy.CamelCase;
        options.Encoder = JavaScriptEncoder.Create(UnicodeRanges.All);
        options.NumberHandling = JsonNumberHandling.Strict;
        options.Converters.Add(new JsonStringEnumConverter<Verdict>(new Words(), allowIntegerValues: false));
        options.Converters.Add(new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false));
        return options;
    }

    private sealed class Words : JsonNamingPolicy
    {
        public override string ConvertName(string name) => KebabCaseLower.ConvertName(name).Replace('-', ' ');
    }
}
