using System.Collections;
using System.Globalization;
using BoothWatch.Service.Sensors;

namespace BoothWatch.Service.Configuration;

/// <summary>The settings that hold, defaults included, without secrets: for the log at start.</summary>
public static class EffectiveConfiguration
{
    private static readonly string[] SecretEndings = ["password", "token", "secret", "apikey", "privatekey", "credential", "webhook:url"];

    /// <summary>Each setting as <c>section:key = value</c>, sections in order of name.</summary>
    public static IEnumerable<string> Lines(IConfiguration configuration) =>
        ConfigurationSections.All
            .OrderBy(section => section.Key, StringComparer.Ordinal)
            .SelectMany(section => section.SelectMany(type => Describe(section.Key, ConfigurationSections.Bind(configuration, type))));

    private static IEnumerable<string> Describe(string path, object? value)
    {
        if (value is null || SettingShape.IsValue(value.GetType()))
        {
            return [$"{path} = {Show(path, value)}"];
        }

        if (value is SensorOptions { Part: SensorsOptions.None })
        {
            // What is not fitted has no wiring, whatever stands beside it.
            return [$"{path}:part = {SensorsOptions.None}"];
        }

        if (value is IDictionary map)
        {
            return map.Keys.Cast<object>().SelectMany(key => Describe($"{path}:{key}", map[key]));
        }

        if (value is IEnumerable list)
        {
            return list.Cast<object?>().SelectMany((entry, index) => Describe(string.Create(CultureInfo.InvariantCulture, $"{path}:{index}"), entry));
        }

        return SettingShape.KeysOf(value.GetType())
            .SelectMany(key => Describe($"{path}:{key.Key}", key.Value.GetValue(value)));
    }

    internal static string Show(string path, object? value)
    {
        if (value is null or "")
        {
            return "(none)";
        }

        if (SecretEndings.Any(ending => path.EndsWith(ending, StringComparison.OrdinalIgnoreCase)))
        {
            return "(set, not shown)";
        }

        string text = Convert.ToString(value, CultureInfo.InvariantCulture) ?? "";
        return Uri.TryCreate(text, UriKind.Absolute, out Uri? address) && address.UserInfo.Length > 0
            ? text.Replace(address.UserInfo + "@", "(set, not shown)@", StringComparison.Ordinal)
            : text;
    }
}
