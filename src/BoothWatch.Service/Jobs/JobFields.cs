using System.Globalization;
using System.Text.Json;
using Microsoft.AspNetCore.Http.HttpResults;

namespace BoothWatch.Service.Jobs;

/// <summary>Reads the fields of a JSON body. What is wrong becomes one answer after RFC 9457 that names each field, its value, its range and an example.</summary>
internal sealed class JobFields
{
    private static readonly string[] TimeFormats = ["yyyy-MM-dd'T'HH:mm:ssK", "yyyy-MM-dd'T'HH:mm:ss.FFFFFFFK", "yyyy-MM-dd'T'HH:mmK"];

    private readonly JsonElement _body;
    private readonly HashSet<string> _read = [];
    private readonly List<(string Field, string Problem)> _problems = [];

    private JobFields(JsonElement body) => _body = body;

    /// <summary>The answer when anything was wrong, unknown fields included; null when all is well. Ask after reading every field.</summary>
    public ProblemHttpResult? Problem
    {
        get
        {
            if (_body.ValueKind == JsonValueKind.Object)
            {
                foreach (JsonProperty property in _body.EnumerateObject().Where(property => _read.Add(property.Name)))
                {
                    _problems.Add((property.Name, $"{property.Name} is not a field; leave it out, known are {string.Join(", ", _read.Where(name => name != property.Name).Order())}"));
                }
            }

            return _problems.Count == 0 ? null : Of(_problems);
        }
    }

    /// <summary>Reads the body of a request.</summary>
    public static async Task<JobFields> Read(HttpRequest request, CancellationToken cancellationToken)
    {
        try
        {
            using JsonDocument document = await JsonDocument.ParseAsync(request.Body, cancellationToken: cancellationToken);
            JobFields fields = new(document.RootElement.Clone());
            if (document.RootElement.ValueKind != JsonValueKind.Object)
            {
                fields._problems.Add(("body", "the body is no object; send a JSON object, {} where there is nothing to say"));
            }

            return fields;
        }
        catch (JsonException error)
        {
            JobFields fields = new(default);
            fields._problems.Add(("body", $"the body is not valid JSON at line {error.LineNumber + 1}, byte {error.BytePositionInLine}; send a JSON object, for example {{}}"));
            return fields;
        }
    }

    /// <summary>An answer about one field.</summary>
    public static ProblemHttpResult Of(string field, string problem) => Of([(field, problem)]);

    /// <summary>A text; null when absent and not required.</summary>
    public string? Text(string name, int longest, string example, bool required = false)
    {
        if (Find(name) is not { } value)
        {
            if (required)
            {
                Add(name, $"{name} is missing; give a text of 1 to {longest} characters, for example \"{example}\"");
            }

            return null;
        }

        string? text = value.ValueKind == JsonValueKind.String ? value.GetString()!.Trim() : null;
        if (text is null || text.Length > longest || (required && text.Length == 0) || text.Any(char.IsControl))
        {
            Add(name, $"{name} is {Shorten(value)}; give a text of {(required ? 1 : 0)} to {longest} characters without control characters, for example \"{example}\"");
        }

        return text;
    }

    /// <summary>A number within a range; the fallback when absent.</summary>
    public double Number(string name, double least, double most, double fallback, string unit)
    {
        if (Find(name) is not { } value)
        {
            return fallback;
        }

        if (value.ValueKind == JsonValueKind.Number && value.GetDouble() is double number && number >= least && number <= most)
        {
            return number;
        }

        Add(name, string.Create(CultureInfo.InvariantCulture, $"{name} is {Shorten(value)}; give a number from {least} to {most} ({unit}), for example {fallback:0.##}"));
        return fallback;
    }

    /// <summary>A whole number of at least 1; null when absent.</summary>
    public long? Id(string name)
    {
        if (Find(name) is not { } value)
        {
            return null;
        }

        if (value.ValueKind == JsonValueKind.Number && value.TryGetInt64(out long id) && id >= 1)
        {
            return id;
        }

        Add(name, $"{name} is {Shorten(value)}; give a whole number of at least 1, for example 12");
        return null;
    }

    /// <summary>One of the words; null when absent.</summary>
    public T? Word<T>(string name, IReadOnlyDictionary<string, T> words, bool required = false)
        where T : struct
    {
        JsonElement? found = Find(name);
        if (found is null && !required)
        {
            return null;
        }

        if (found is { ValueKind: JsonValueKind.String } value && words.TryGetValue(value.GetString()!, out T word))
        {
            return word;
        }

        Add(name, $"{name} is {(found is { } given ? Shorten(given) : "missing")}; give one of {string.Join(", ", words.Keys)}, for example \"{words.Keys.First()}\"");
        return null;
    }

    /// <summary>A material or schedule by id; the fallback when absent.</summary>
    public string? Known(string name, IEnumerable<string> ids, string? fallback)
    {
        if (Find(name) is not { } value)
        {
            return fallback;
        }

        string? id = value.ValueKind == JsonValueKind.String ? ids.FirstOrDefault(id => string.Equals(id, value.GetString(), StringComparison.OrdinalIgnoreCase)) : null;
        if (id is null)
        {
            Add(name, $"{name} is {Shorten(value)}; give one of {string.Join(", ", ids.Order())}");
        }

        return id ?? fallback;
    }

    /// <summary>A time of the past after RFC 3339; null when absent.</summary>
    public DateTimeOffset? Time(string name, DateTimeOffset now)
    {
        if (Find(name) is not { } value)
        {
            return null;
        }

        string text = value.ValueKind == JsonValueKind.String ? value.GetString()! : "";
        bool hasOffset = text.EndsWith('Z') || text.LastIndexOfAny(['+', '-']) > text.IndexOf('T', StringComparison.Ordinal);
        if (hasOffset
            && DateTimeOffset.TryParseExact(text, TimeFormats, CultureInfo.InvariantCulture, DateTimeStyles.AdjustToUniversal, out DateTimeOffset time)
            && time.Year >= 2000
            && time <= now.AddMinutes(1))
        {
            return time;
        }

        Add(name, $"{name} is {Shorten(value)}; give a time after RFC 3339 with Z or an offset, from the year 2000 until now, for example \"{now.UtcDateTime:yyyy-MM-dd'T'HH:mm:ss'Z'}\"");
        return null;
    }

    /// <summary>True or false; false when absent.</summary>
    public bool Flag(string name)
    {
        JsonElement? found = Find(name);
        if (found is { ValueKind: not (JsonValueKind.True or JsonValueKind.False) } other)
        {
            Add(name, $"{name} is {Shorten(other)}; give true or false, for example false");
        }

        return found is { ValueKind: JsonValueKind.True };
    }

    /// <summary>True when the body holds the field with null in it.</summary>
    public bool IsNull(string name)
    {
        _read.Add(name);
        return _body.ValueKind == JsonValueKind.Object && _body.TryGetProperty(name, out JsonElement value) && value.ValueKind == JsonValueKind.Null;
    }

    private static ProblemHttpResult Of(IReadOnlyList<(string Field, string Problem)> problems) => TypedResults.Problem(
        title: "A field is wrong",
        detail: string.Join(". ", problems.Select(problem => problem.Problem)),
        statusCode: StatusCodes.Status400BadRequest,
        extensions: new Dictionary<string, object?> { ["fields"] = problems.Select(problem => problem.Field).Distinct().ToArray() });

    private static string Shorten(JsonElement value)
    {
        string text = value.GetRawText();
        return text.Length <= 60 ? text : text[..57] + "...";
    }

    private void Add(string field, string problem) => _problems.Add((field, problem));

    private JsonElement? Find(string name)
    {
        _read.Add(name);
        return _body.ValueKind == JsonValueKind.Object && _body.TryGetProperty(name, out JsonElement value) && value.ValueKind != JsonValueKind.Null ? value : null;
    }
}
