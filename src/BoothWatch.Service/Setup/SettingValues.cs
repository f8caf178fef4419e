using System.Collections.Frozen;
using System.Reflection;
using BoothWatch.Service.Coat;
using BoothWatch.Service.Configuration;

namespace BoothWatch.Service.Setup;

/// <summary>The settings that the two forms of the setup page may change: names of the booth, and what is in the cup. Sensors: <see cref="SensorPlan"/>.</summary>
internal static class SettingValues
{
    private static readonly (string Section, string[] Keys)[] Changeable =
    [
        (BoothOptions.Section, ["shop", "name", "altitudeM", "temperatureUnit"]),
        (CoatOptions.Section, ["kind", "lacquer", "thinner", "retarder", "substrate", "lacquerParts", "thinnerParts", "retarderHighestPct", "cupMl"]),
    ];

    /// <summary>Their full keys, in the order of the file.</summary>
    public static IReadOnlyList<string> Keys { get; } = [.. Changeable.SelectMany(section => section.Keys, (section, key) => $"{section.Section}:{key}")];

    /// <summary>The keys that concern the materials.</summary>
    public static IReadOnlyList<string> OfCoat { get; } = [.. Keys.Where(key => key.StartsWith(CoatOptions.Section, StringComparison.Ordinal))];

    /// <summary>What holds for each of <see cref="Keys"/>: the configured value or the default; null where there is none of either.</summary>
    public static IReadOnlyDictionary<string, object?> Of(IConfiguration configuration) => Held(configuration, Keys);

    /// <summary>The same for one setting of any section.</summary>
    /// <param name="configuration">The configuration.</param>
    /// <param name="key">Full key of a value, for example <c>sensors:boothAir:part</c>.</param>
    public static object? Held(IConfiguration configuration, string key) => Held(configuration, [key])[key];

    /// <summary>The same for several.</summary>
    public static IReadOnlyDictionary<string, object?> Held(IConfiguration configuration, IEnumerable<string> keys)
    {
        Dictionary<string, object?> values = new(StringComparer.OrdinalIgnoreCase);
        foreach (IGrouping<string, string> section in keys.GroupBy(key => key[..key.IndexOf(':', StringComparison.Ordinal)], StringComparer.OrdinalIgnoreCase))
        {
            object?[] bound = [.. ConfigurationSections.All[section.Key].Select(type => Bind(configuration, type))];
            foreach (string key in section)
            {
                values[key] = bound.Contains(null) ? configuration[key] : bound.Select(options => Read(options, key.Split(':')[1..])).FirstOrDefault(value => value is not null);
            }
        }

        return values.ToFrozenDictionary(StringComparer.OrdinalIgnoreCase);
    }

    // Null when something in the section cannot be read: the check says what.
    private static object? Bind(IConfiguration configuration, Type type)
    {
        try
        {
            return ConfigurationSections.Bind(configuration, type);
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }

    private static object? Read(object? value, string[] names)
    {
        foreach (string name in names)
        {
            value = value is not null && SettingShape.KeysOf(value.GetType()).TryGetValue(name, out PropertyInfo? property) ? property.GetValue(value) : null;
        }

        return value is Enum word ? word.ToString().ToLowerInvariant() : value;
    }
}
