using System.Globalization;
using System.Numerics;
using Microsoft.AspNetCore.Http.HttpResults;

namespace BoothWatch.Service.Page;

/// <summary>Reads the parameters of a query. What is wrong becomes one answer after RFC 9457 that names the parameter, its range and an example.</summary>
internal sealed class QueryText(IQueryCollection query)
{
    private readonly List<(string Parameter, string Problem)> _problems = [];

    /// <summary>The answer when anything was wrong; null when all is well.</summary>
    public ProblemHttpResult? Problem => _problems.Count == 0 ? null : TypedResults.Problem(
        title: "A parameter is wrong",
        detail: string.Join(". ", _problems.Select(p => p.Problem)),
        statusCode: StatusCodes.Status400BadRequest,
        extensions: new Dictionary<string, object?> { ["parameters"] = _problems.Select(p => p.Parameter).ToArray() });

    /// <summary>A number from <paramref name="least"/> to <paramref name="most"/>.</summary>
    public double Number(string name, double least, double most, double fallback, string unit) =>
        Within(name, NumberStyles.Float, least, most, fallback, unit);

    /// <summary>A whole number from <paramref name="least"/> to <paramref name="most"/>.</summary>
    public int Whole(string name, int least, int most, int fallback, string unit) =>
        Within(name, NumberStyles.AllowLeadingSign, least, most, fallback, unit);

    /// <summary>Size and theme of a picture: width, height (CSS pixels) and theme.</summary>
    public (int Width, int Height, string Theme) Picture() => (
        Whole("width", 240, 2400, 720, "pixels"), Whole("height", 160, 1600, 330, "pixels"), Word("theme", "dark", "light"));

    /// <summary>A time after RFC 3339 with its offset.</summary>
    public DateTimeOffset Time(string name, DateTimeOffset fallback, DateTimeOffset example)
    {
        string? text = query[name];
        if (string.IsNullOrEmpty(text))
        {
            return fallback;
        }

        string[] formats = ["yyyy-MM-dd'T'HH:mm:ssK", "yyyy-MM-dd'T'HH:mm:ss.FFFFFFFK", "yyyy-MM-dd'T'HH:mmK"];
        bool hasOffset = text.EndsWith('Z') || text.LastIndexOfAny(['+', '-']) > text.IndexOf('T', StringComparison.Ordinal);
        if (hasOffset && DateTimeOffset.TryParseExact(text, formats, CultureInfo.InvariantCulture, DateTimeStyles.AdjustToUniversal, out DateTimeOffset time))
        {
            return time;
        }

        Add(name, text, $"give a time after RFC 3339 with Z or an offset (write + as %2B), for example {name}={example.UtcDateTime:yyyy-MM-dd'T'HH:mm:ss'Z'}");
        return fallback;
    }

    /// <summary>One of the words.</summary>
    public string Word(string name, params string[] words)
    {
        string? text = query[name];
        if (string.IsNullOrEmpty(text))
        {
            return words[0];
        }

        if (words.Contains(text))
        {
            return text;
        }

        Add(name, text, $"give {string.Join(" or ", words)}, for example {name}={words[0]}");
        return words[0];
    }

    /// <summary>Notes a problem that concerns more than one value.</summary>
    public void Add(string name, string? given, string fix) => _problems.Add((name, $"{name} is {given}; {fix}"));

    private T Within<T>(string name, NumberStyles style, T least, T most, T fallback, string unit)
        where T : INumber<T>
    {
        string? text = query[name];
        if (string.IsNullOrEmpty(text))
        {
            return fallback;
        }

        if (T.TryParse(text, style, CultureInfo.InvariantCulture, out T? value) && value >= least && value <= most)
        {
            return value;
        }

        Add(name, text, string.Create(CultureInfo.InvariantCulture, $"give {unit} from {least} to {most}, for example {name}={fallback:0.###}"));
        return fallback;
    }
}
