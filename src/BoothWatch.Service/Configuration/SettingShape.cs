using System.ComponentModel;
using System.Globalization;
using System.Reflection;

namespace BoothWatch.Service.Configuration;

/// <summary>What an options type allows in the configuration: one value, a list, named entries, or an object of known keys.</summary>
internal static class SettingShape
{
    public static bool IsValue(Type type) =>
        type == typeof(string) || type == typeof(object) || TypeDescriptor.GetConverter(Bare(type)).CanConvertFrom(typeof(string));

    /// <summary>The type of the entries of a dictionary or a list; null for anything else.</summary>
    public static Type? EntryOf(Type type)
    {
        if (type.IsArray)
        {
            return type.GetElementType();
        }

        Type[] contracts = [type, .. type.GetInterfaces()];
        Type? map = contracts.FirstOrDefault(c => Is(c, typeof(IDictionary<,>)) || Is(c, typeof(IReadOnlyDictionary<,>)));
        return map is not null
            ? map.GetGenericArguments()[1]
            : contracts.FirstOrDefault(c => Is(c, typeof(IEnumerable<>)))?.GetGenericArguments()[0];
    }

    public static IReadOnlyDictionary<string, PropertyInfo> KeysOf(Type type) => type
        .GetProperties(BindingFlags.Public | BindingFlags.Instance)
        .Where(property => property.GetIndexParameters().Length == 0 && (property.SetMethod is { IsPublic: true } || !IsValue(property.PropertyType)))
        .ToDictionary(KeyOf, StringComparer.OrdinalIgnoreCase);

    public static string KeyOf(PropertyInfo property) =>
        property.GetCustomAttribute<ConfigurationKeyNameAttribute>()?.Name ?? char.ToLowerInvariant(property.Name[0]) + property.Name[1..];

    /// <summary>Whether the text can be read as the type; numbers must be finite.</summary>
    public static bool Reads(Type type, string text)
    {
        Type bare = Bare(type);
        if (bare == typeof(string) || bare == typeof(object) || (text.Length == 0 && bare != type))
        {
            return true;
        }

        try
        {
            object? value = TypeDescriptor.GetConverter(bare).ConvertFromInvariantString(text);
            return value switch
            {
                double number => double.IsFinite(number),
                Enum chosen => Enum.IsDefined(bare, chosen),
                _ => value is not null,
            };
        }
        catch (Exception problem) when (problem is ArgumentException or FormatException or NotSupportedException or OverflowException)
        {
            return false;
        }
    }

    /// <summary>What to write for a type, with the default as the example.</summary>
    public static string Wanted(Type type, object? fallback)
    {
        Type bare = Bare(type);
        string kind =
            bare.IsEnum ? $"one of {string.Join(", ", Enum.GetNames(bare).Select(name => name.ToLowerInvariant()))}"
            : bare == typeof(bool) ? "true or false"
            : bare == typeof(double) || bare == typeof(float) || bare == typeof(decimal) ? "a number"
            : bare.IsPrimitive ? "a whole number"
            : bare == typeof(TimeSpan) ? "a time as hours:minutes:seconds"
            : bare == typeof(string) ? "a text"
            : $"a {bare.Name}";
        string? example = fallback switch
        {
            null => null,
            bool or Enum => Convert.ToString(fallback, CultureInfo.InvariantCulture)!.ToLowerInvariant(),
            _ => Convert.ToString(fallback, CultureInfo.InvariantCulture),
        };
        return string.IsNullOrEmpty(example) ? kind : $"{kind}, for example {example}";
    }

    private static Type Bare(Type type) => Nullable.GetUnderlyingType(type) ?? type;

    private static bool Is(Type type, Type open) => type.IsGenericType && type.GetGenericTypeDefinition() == open;
}
