using System.Collections.Frozen;
using System.Reflection;
using BoothWatch.Service.Coat;
using BoothWatch.Service.Configuration;

namespace BoothWatch.Service.Setup;

/// <summary>The settings that the setup page may change: names of the booth, and what is in the cup. Nothing else of the file can be reached from it.</summary>
internal static class SettingValues
{
    private static readonly (Type Type, string Section, string[] Keys)[] Changeable =
    [
        (typeof(BoothOptions), BoothOptions.Section, ["shop", "name", "altitudeM", "temperatureUnit"]),
        (typeof(CoatOptions), CoatOptions.Section,
            ["kind", "lacquer", "thinner", "retarder", "substrate", "lacquerParts", "thinnerParts", "retarderHighestPct", "cupMl"]),
    ];

    /// <summary>Their full keys, in the order of the file.</summary>
    public static IReadOnlyList<string> Keys { get; } = [.. Changeable.SelectMany(section => section.Keys, (section, key) => $"{section.Section}:{key}")];

    /// <summary>The keys that concern the materials.</summary>
    public static IReadOnlyList<string> OfCoat { get; } = [.. Keys.Where(key => key.StartsWith(CoatOptions.Section, StringComparison.Ordinal))];

    /// <summary>What holds for each key: the configured value or the default; null where there is none of either.</summary>
    public static IReadOnlyDictionary<string, object?> Of(IConfiguration configuration)
    {
        Dictionary<string, object?> values = [];
        foreach ((Type type, string section, string[] keys) in Changeable)
        {
            object options = ConfigurationSections.Bind(configuration, type);
            IReadOnlyDictionary<string, PropertyInfo> properties = SettingShape.KeysOf(type);
            foreach (string key in keys)
            {
                object? value = properties[key].GetValue(options);
                values[$"{section}:{key}"] = value is Enum word ? word.ToString().ToLowerInvariant() : value;
            }
        }

        return values.ToFrozenDictionary();
    }
}
