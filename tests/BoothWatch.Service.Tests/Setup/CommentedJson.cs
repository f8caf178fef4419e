using System.Globalization;
using System.Text;

namespace BoothWatch.Service.Tests.Setup;

/// <summary>A made-up configuration text with comments, odd spacing, trailing commas and odd texts, and where its values stand in it.</summary>
internal sealed class CommentedJson
{
    private static readonly string[] Spaces =
        ["", "", " ", "\n", "\n  ", "\r\n\t", " // , } { \" ]\n", "\n    // \"fresh\": 1,\n    ", "/* , } \" // */", " /* \n */ "];

    private static readonly string[] Scalars =
        ["\"plain\"", "\"\"", "\"// no comment\"", "\"/* nor this */ , }\"", "\"\\\"quoted\\\" \\\\\"", "\"Möbel 木\"", "12", "-0.5e3", "true", "false", "null"];

    private readonly StringBuilder _text = new();
    private readonly Random _random;

    private CommentedJson(Random random) => _random = random;

    public string Text => _text.ToString();

    /// <summary>Path of every plain value outside of lists, with where it begins and ends.</summary>
    public Dictionary<string, (int Start, int End)> Values { get; } = [];

    /// <summary>Path of every section; the outermost is empty.</summary>
    public List<string> Sections { get; } = [];

    public static CommentedJson Make(Random random)
    {
        CommentedJson json = new(random);
        json._text.Append(random.Next(5) == 0 ? "\uFEFF" : "");
        json.Space();
        json.Section("", 0);
        json.Space();
        return json;
    }

    private void Section(string path, int depth)
    {
        Sections.Add(path);
        int count = _random.Next(4);
        _text.Append('{');
        for (int i = 0; i < count; i++)
        {
            string name = (_random.Next(2) == 0 ? "name" : "Näme") + i.ToString(CultureInfo.InvariantCulture);
            string inner = path.Length > 0 ? $"{path}:{name}" : name;
            Space();
            // The reader takes no comment between a name and its colon.
            _text.Append('"').Append(name).Append('"').Append(' ', _random.Next(2)).Append(':');
            Space();
            Value(inner, depth);
            Space();
            _text.Append(i < count - 1 || _random.Next(4) == 0 ? "," : "");
        }

        Space();
        _text.Append('}');
    }

    private void Value(string path, int depth)
    {
        switch (_random.Next(6))
        {
            case 0 or 1 when depth < 3:
                Section(path, depth + 1);
                break;
            case 2:
                _text.Append('[');
                Space();
                _text.Append(_random.Next(2) == 0 ? "1, { \"name0\": 2 }" : "");
                Space();
                _text.Append(']');
                break;
            default:
                int start = _text.Length;
                _text.Append(Scalars[_random.Next(Scalars.Length)]);
                Values[path] = (start, _text.Length);
                break;
        }
    }

    private void Space() => _text.Append(Spaces[_random.Next(Spaces.Length)]);
}
