using System.Globalization;
using System.Text;
using System.Text.Json;

namespace BoothWatch.Service.Records;

/// <summary>
/// The one way to write a JSON value so that the same data is always the same bytes: the JSON Canonicalization Scheme of RFC 8785.
/// Members in the order of their names' UTF-16 code units, no white space, numbers as ECMAScript writes them, UTF-8.
/// </summary>
public static class CanonicalJson
{
    /// <summary>ECMAScript writes numbers of up to so many digits before the point without an exponent, and down to 10^-6.</summary>
    private const int MostWholeDigits = 21;
    private const int MostLeadingZeros = 6;

    /// <summary>The canonical bytes of a value.</summary>
    /// <exception cref="FormatException">A number is beyond double precision, or a text is no valid Unicode: not I-JSON (RFC 7493).</exception>
    public static byte[] Bytes(JsonElement value)
    {
        StringBuilder text = new();
        try
        {
            Write(text, value);
        }
        catch (InvalidOperationException notUnicode)
        {
            throw new FormatException("a text is no valid Unicode", notUnicode);
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }

    /// <summary>A number as ECMAScript's Number::toString writes it (ECMA-262, 6.1.6.1.20).</summary>
    /// <exception cref="FormatException">It is infinite or no number.</exception>
    public static string Number(double value)
    {
        if (!double.IsFinite(value))
        {
            throw new FormatException("a number is beyond what double precision holds");
        }

        if (value == 0)
        {
            return "0";
        }

        // The runtime finds the shortest digits that read back as the same number; only their arrangement differs.
        string[] parts = Math.Abs(value).ToString("R", CultureInfo.InvariantCulture).Split('E');
        string[] mantissa = parts[0].Split('.');
        string all = string.Concat(mantissa);
        int leading = all.Length - all.TrimStart('0').Length;
        int point = mantissa[0].Length - leading + (parts.Length > 1 ? int.Parse(parts[1], CultureInfo.InvariantCulture) : 0);
        return (value < 0 ? "-" : "") + Arranged(all.Trim('0'), point);
    }

    private static string Arranged(string digits, int point)
    {
        if (point > MostWholeDigits || point <= -MostLeadingZeros)
        {
            int exponent = point - 1;
            string fraction = digits.Length > 1 ? "." + digits[1..] : "";
            return string.Create(CultureInfo.InvariantCulture, $"{digits[0]}{fraction}e{(exponent < 0 ? '-' : '+')}{Math.Abs(exponent)}");
        }

        return point <= 0 ? "0." + new string('0', -point) + digits
            : digits.Length <= point ? digits.PadRight(point, '0')
            : digits[..point] + "." + digits[point..];
    }

    private static void Write(StringBuilder text, JsonElement value)
    {
        switch (value.ValueKind)
        {
            case JsonValueKind.Object:
                List(text, '{', '}', value.EnumerateObject().OrderBy(member => member.Name, StringComparer.Ordinal), member =>
                {
                    Write(text, member.Name);
                    text.Append(':');
                    Write(text, member.Value);
                });
                break;
            case JsonValueKind.Array:
                List(text, '[', ']', value.EnumerateArray(), item => Write(text, item));
                break;
            case JsonValueKind.String:
                Write(text, value.GetString()!);
                break;
            case JsonValueKind.Number:
                text.Append(Number(value.GetDouble()));
                break;
            default:
                text.Append(value.GetRawText());
                break;
        }
    }

    private static void List<T>(StringBuilder text, char open, char close, IEnumerable<T> items, Action<T> write)
    {
        text.Append(open);
        bool first = true;
        foreach (T item in items)
        {
            if (!first)
            {
                text.Append(',');
            }

            first = false;
            write(item);
        }

        text.Append(close);
    }

    private static void Write(StringBuilder text, string value)
    {
        text.Append('"');
        foreach (char c in value)
        {
            switch (c)
            {
                case '"' or '\\':
                    text.Append('\\').Append(c);
                    break;
                case '\b':
                    text.Append("\\b");
                    break;
                case '\t':
                    text.Append("\\t");
                    break;
                case '\n':
                    text.Append("\\n");
                    break;
                case '\f':
                    text.Append("\\f");
                    break;
                case '\r':
                    text.Append("\\r");
                    break;
                case < ' ':
                    text.Append(CultureInfo.InvariantCulture, $"\\u{(int)c:x4}");
                    break;
                default:
                    text.Append(c);
                    break;
            }
        }

        text.Append('"');
    }
}
