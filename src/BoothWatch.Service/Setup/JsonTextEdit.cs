using System.Text;
using System.Text.Json;

namespace BoothWatch.Service.Setup;

/// <summary>
/// Changes one value in the text of a JSON file with comments, and leaves every other byte as it is: comments, order, spacing, line ends
/// and a byte order mark. Names are found in any case, as the configuration reads them.
/// </summary>
internal static class JsonTextEdit
{
    private static readonly JsonReaderOptions Options = new() { AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip };

    /// <summary>Puts a value in the place of another, or adds what is missing at the end of its section.</summary>
    /// <param name="text">The file, UTF-8.</param>
    /// <param name="path">Names from the outermost section to the setting, with colons between: <c>booth:name</c>.</param>
    /// <param name="token">The value as JSON: a text in quotes, a number, true, false or null.</param>
    /// <exception cref="InvalidDataException">The text is no JSON object, holds a name of the path twice, or holds something else than a value there.</exception>
    public static byte[] Set(ReadOnlySpan<byte> text, string path, string token)
    {
        ReadOnlySpan<byte> mark = Encoding.UTF8.Preamble;
        int start = text.StartsWith(mark) ? mark.Length : 0;
        List<Splice> splices;
        try
        {
            Utf8JsonReader reader = new(text[start..], Options);
            if (!reader.Read() || reader.TokenType != JsonTokenType.StartObject)
            {
                throw new InvalidDataException("the file holds no settings: it must begin with {");
            }

            splices = Find(ref reader, text[start..], path.Split(':'), 0, token);
            while (reader.Read())
            {
                // To the end, so that whatever follows the settings is found out here.
            }
        }
        catch (JsonException error)
        {
            throw new InvalidDataException($"line {error.LineNumber + 1}: not valid JSON: {error.Message}", error);
        }

        List<byte> edited = [.. text];
        foreach (Splice splice in Enumerable.Reverse(splices))
        {
            edited.RemoveRange(start + splice.At, splice.Length);
            edited.InsertRange(start + splice.At, Encoding.UTF8.GetBytes(splice.Text));
        }

        return [.. edited];
    }

    private static List<Splice> Find(ref Utf8JsonReader reader, ReadOnlySpan<byte> text, string[] names, int depth, string token)
    {
        int open = (int)reader.TokenStartIndex;
        int firstName = -1;
        int lastEnd = -1;
        List<Splice>? found = null;
        while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
        {
            firstName = firstName < 0 ? (int)reader.TokenStartIndex : firstName;
            bool isAsked = string.Equals(reader.GetString(), names[depth], StringComparison.OrdinalIgnoreCase);
            reader.Read();
            if (!isAsked)
            {
                reader.Skip();
            }
            else if (found is not null)
            {
                throw new InvalidDataException($"{Key(names, depth)} is given twice; keep one of the two");
            }
            else
            {
                found = At(ref reader, text, names, depth, token);
            }

            lastEnd = (int)reader.BytesConsumed;
        }

        return found ?? Add(text, new Section(open, firstName, lastEnd, (int)reader.TokenStartIndex), Member(names, depth, token));
    }

    private static List<Splice> At(ref Utf8JsonReader reader, ReadOnlySpan<byte> text, string[] names, int depth, string token)
    {
        bool isLast = depth == names.Length - 1;
        if (!isLast && reader.TokenType == JsonTokenType.StartObject)
        {
            return Find(ref reader, text, names, depth + 1, token);
        }

        if (reader.TokenType is JsonTokenType.StartObject or JsonTokenType.StartArray)
        {
            throw new InvalidDataException($"{Key(names, depth)} holds settings or a list, where a value was expected");
        }

        if (!isLast && reader.TokenType != JsonTokenType.Null)
        {
            throw new InvalidDataException($"{Key(names, depth)} is a value, where settings were expected");
        }

        int at = (int)reader.TokenStartIndex;
        string with = isLast ? token : $"{{ {Member(names, depth + 1, token)} }}";
        return [new Splice(at, (int)reader.BytesConsumed - at, with)];
    }

    private static List<Splice> Add(ReadOnlySpan<byte> text, Section section, string member)
    {
        int contentEnd = section.Close;
        while (contentEnd > section.Open + 1 && IsSpace(text[contentEnd - 1]))
        {
            contentEnd--;
        }

        List<Splice> splices = [];
        if (section.LastEnd >= 0 && !HasComma(text[section.LastEnd..section.Close]))
        {
            splices.Add(new Splice(section.LastEnd, 0, ","));
        }

        ReadOnlySpan<byte> inside = text[section.Open..section.Close];
        int lineFeed = inside.IndexOf((byte)'\n');
        if (lineFeed < 0)
        {
            splices.Add(new Splice(contentEnd, 0, " " + member + (section.LastEnd < 0 && contentEnd == section.Close ? " " : "")));
            return splices;
        }

        string lineEnd = lineFeed > 0 && inside[lineFeed - 1] == '\r' ? "\r\n" : "\n";
        string? indent = IndentOf(text, section.FirstName) ?? (IndentOf(text, section.Close) ?? "") + "  ";
        splices.Add(new Splice(contentEnd, 0, lineEnd + indent + member));
        return splices;
    }

    // The space before something that stands first in its line; null when something else does.
    private static string? IndentOf(ReadOnlySpan<byte> text, int at)
    {
        if (at < 0)
        {
            return null;
        }

        int line = text[..at].LastIndexOf((byte)'\n') + 1;
        ReadOnlySpan<byte> before = text[line..at];
        foreach (byte value in before)
        {
            if (!IsSpace(value))
            {
                return null;
            }
        }

        return Encoding.UTF8.GetString(before);
    }

    // Whether a comma stands between the last value of a section and its end, outside of comments.
    private static bool HasComma(ReadOnlySpan<byte> rest)
    {
        int at = 0;
        while (at < rest.Length && rest[at] != ',')
        {
            ReadOnlySpan<byte> here = rest[at..];
            int end = here.StartsWith("//"u8) ? here.IndexOf((byte)'\n')
                : here.StartsWith("/*"u8) ? here[2..].IndexOf("*/"u8) + 3
                : 0;
            at = end < 0 ? rest.Length : at + end + 1;
        }

        return at < rest.Length;
    }

    private static string Member(string[] names, int depth, string token)
    {
        string value = depth == names.Length - 1 ? token : $"{{ {Member(names, depth + 1, token)} }}";
        return $"\"{JsonEncodedText.Encode(names[depth])}\": {value}";
    }

    private static string Key(string[] names, int depth) => string.Join(':', names.Take(depth + 1));

    private static bool IsSpace(byte value) => value is (byte)' ' or (byte)'\t' or (byte)'\r' or (byte)'\n';

    private readonly record struct Splice(int At, int Length, string Text);

    /// <summary>Where a section begins and ends in the text, and where its first name begins and its last value ends; -1 when it is empty.</summary>
    private readonly record struct Section(int Open, int FirstName, int LastEnd, int Close);
}
