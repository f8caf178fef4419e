using System.Globalization;
using System.Text.Json;

namespace BoothWatch.Service.Materials;

/// <summary>One JSON object of a materials file. Reading collects errors instead of throwing, each naming file, key, value and fix.</summary>
internal sealed class MaterialNode(JsonElement element, string path, List<string> errors)
{
    private readonly HashSet<string> _read = [];

    /// <summary>File and key, for messages.</summary>
    public string Path => path;

    /// <summary>The same object under another path in messages; what was read stays read.</summary>
    public MaterialNode Renamed(string newPath)
    {
        MaterialNode renamed = new(element, newPath, errors);
        renamed._read.UnionWith(_read);
        return renamed;
    }

    /// <summary>Adds an error about a key of this object.</summary>
    public void Fail(string key, string problem) => errors.Add($"{path}.{key} {problem}");

    /// <summary>A text that must be there.</summary>
    public string Text(string key)
    {
        if (Find(key) is { ValueKind: JsonValueKind.String } value && !string.IsNullOrWhiteSpace(value.GetString()))
        {
            return value.GetString()!;
        }

        Fail(key, $"is {Show(key)}; give a text");
        return string.Empty;
    }

    /// <summary>A list of texts; empty when absent.</summary>
    public List<string> Texts(string key)
    {
        List<string> texts = [];
        if (Find(key) is not { } value)
        {
            return texts;
        }

        if (value.ValueKind != JsonValueKind.Array || value.EnumerateArray().Any(item => item.ValueKind != JsonValueKind.String))
        {
            Fail(key, $"is {Show(key)}; give a list of texts");
            return texts;
        }

        texts.AddRange(value.EnumerateArray().Select(item => item.GetString()!));
        return texts;
    }

    /// <summary>A number within a range.</summary>
    public double Number(string key, double low, double high, string unit, double example)
    {
        if (Find(key) is { ValueKind: JsonValueKind.Number } value && value.GetDouble() is double number && number >= low && number <= high)
        {
            return number;
        }

        Fail(key, string.Create(
            CultureInfo.InvariantCulture, $"is {Show(key)}; give a number from {low} to {high} {unit}, for example {example}"));
        return example;
    }

    /// <summary>A number within a range, or null when absent.</summary>
    public double? OptionalNumber(string key, double low, double high, string unit, double example) =>
        element.ValueKind == JsonValueKind.Object && element.TryGetProperty(key, out _) ? Number(key, low, high, unit, example) : null;

    /// <summary>A list of so many numbers; null after an error.</summary>
    public double[]? Numbers(string key, int count)
    {
        if (Find(key) is { ValueKind: JsonValueKind.Array } value
            && value.GetArrayLength() == count
            && value.EnumerateArray().All(item => item.ValueKind == JsonValueKind.Number))
        {
            return [.. value.EnumerateArray().Select(item => item.GetDouble())];
        }

        Fail(key, $"is {Show(key)}; give a list of {count} numbers");
        return null;
    }

    /// <summary>An inner object; null after an error.</summary>
    public MaterialNode? Inner(string key)
    {
        if (Find(key) is { ValueKind: JsonValueKind.Object } value)
        {
            return new MaterialNode(value, $"{path}.{key}", errors);
        }

        Fail(key, $"is {Show(key)}; give an object");
        return null;
    }

    /// <summary>A list of anything; false when it is absent or no list.</summary>
    public bool TryList(string key, out JsonElement list)
    {
        list = Find(key) ?? default;
        return list.ValueKind == JsonValueKind.Array;
    }

    /// <summary>All keys with their values, for objects whose keys are names.</summary>
    public IEnumerable<string> Keys()
    {
        if (element.ValueKind != JsonValueKind.Object)
        {
            errors.Add($"{path} is {Shorten(element.GetRawText())}; give an object");
            return [];
        }

        return element.EnumerateObject().Select(property => property.Name);
    }

    /// <summary>Reports keys that nobody read: a misspelt key must not pass in silence.</summary>
    public void RejectUnknownKeys()
    {
        foreach (string key in Keys().Where(key => !_read.Contains(key)))
        {
            Fail(key, $"is not a known key; remove it or correct its spelling, known are {string.Join(", ", _read.Order())}");
        }
    }

    private JsonElement? Find(string key)
    {
        _read.Add(key);
        return element.ValueKind == JsonValueKind.Object && element.TryGetProperty(key, out JsonElement value) ? value : null;
    }

    private string Show(string key) => Find(key) is { } value ? Shorten(value.GetRawText()) : "missing";

    private static string Shorten(string text) => text.Length <= 60 ? text : text[..57] + "...";
}
