using BoothWatch.Service.Configuration;

namespace BoothWatch.Service.Setup;

/// <summary>What reads differently in two texts of the configuration file, for people: secrets are not shown.</summary>
internal static class ConfigurationDifference
{
    /// <summary>Each setting that reads differently, in order of key. Only values: a section has none of its own.</summary>
    public static IEnumerable<SettingChange> Between(ConfigurationFile from, ConfigurationFile to)
    {
        Dictionary<string, string?> before = Flat(from);
        Dictionary<string, string?> after = Flat(to);
        return before.Keys.Union(after.Keys, StringComparer.OrdinalIgnoreCase)
            .Where(key => !string.Equals(before.GetValueOrDefault(key), after.GetValueOrDefault(key), StringComparison.Ordinal))
            .Order(StringComparer.Ordinal)
            .Select(key => new SettingChange(key, Show(key, before), Show(key, after)));
    }

    /// <summary>The same in words, one line a setting; what is wrong with the second text comes first.</summary>
    public static IReadOnlyList<string> Words(ConfigurationFile from, ConfigurationFile to)
    {
        string[] words = [.. to.Errors, .. Between(from, to).Select(change => $"{change.Key} from {change.Before} to {change.After}")];
        return words.Length > 0 ? words : ["comments or spacing only"];
    }

    private static string Show(string key, Dictionary<string, string?> values) =>
        values.GetValueOrDefault(key) is { } value ? EffectiveConfiguration.Show(key, value) : "(not set)";

    private static Dictionary<string, string?> Flat(ConfigurationFile file) => file.Configuration.AsEnumerable()
        .Where(pair => pair.Value is not null)
        .ToDictionary(StringComparer.OrdinalIgnoreCase);
}
