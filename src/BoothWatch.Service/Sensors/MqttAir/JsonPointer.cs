using System.Globalization;
using System.Text.Json;

namespace BoothWatch.Service.Sensors.MqttAir;

/// <summary>Finds a value in a JSON document by a JSON pointer (RFC 6901).</summary>
internal static class JsonPointer
{
    /// <summary>True when the text is a pointer: empty, or parts that each begin with a slash, in which ~ is only ~0 or ~1.</summary>
    public static bool IsValid(string pointer)
    {
        if (pointer.Length > 0 && pointer[0] != '/')
        {
            return false;
        }

        for (int tilde = pointer.IndexOf('~', StringComparison.Ordinal); tilde >= 0; tilde = pointer.IndexOf('~', tilde + 1))
        {
            if (tilde + 1 >= pointer.Length || pointer[tilde + 1] is not ('0' or '1'))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The value at a pointer; null when there is none.</summary>
    public static JsonElement? Find(JsonElement root, string pointer)
    {
        JsonElement here = root;
        foreach (string part in pointer.Split('/').Skip(1))
        {
            string name = part.Replace("~1", "/", StringComparison.Ordinal).Replace("~0", "~", StringComparison.Ordinal);
            switch (here.ValueKind)
            {
                case JsonValueKind.Object when here.TryGetProperty(name, out JsonElement member):
                    here = member;
                    break;
                case JsonValueKind.Array when IndexOf(name) is { } index && index < here.GetArrayLength():
                    here = here[index];
                    break;
                default:
                    return null;
            }
        }

        return here;
    }

    // RFC 6901, 4: digits without a leading zero.
    private static int? IndexOf(string name) =>
        (name == "0" || (name.Length > 0 && name[0] != '0')) && int.TryParse(name, NumberStyles.None, CultureInfo.InvariantCulture, out int index)
            ? index
            : null;
}
