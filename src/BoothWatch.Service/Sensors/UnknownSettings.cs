using System.Reflection;

namespace BoothWatch.Service.Sensors;

/// <summary>Finds settings that nothing reads: mostly slips of the pen, which would otherwise leave a default in force.</summary>
internal static class UnknownSettings
{
    /// <summary>An error for each key of a section that the options class does not have.</summary>
    public static IEnumerable<string> In(IConfigurationSection section, Type options)
    {
        PropertyInfo[] known = options.GetProperties(BindingFlags.Public | BindingFlags.Instance);
        foreach (IConfigurationSection setting in section.GetChildren())
        {
            PropertyInfo? property = Array.Find(known, candidate => candidate.Name.Equals(setting.Key, StringComparison.OrdinalIgnoreCase));
            if (property is null)
            {
                IEnumerable<string> names = known.Select(candidate => char.ToLowerInvariant(candidate.Name[0]) + candidate.Name[1..]);
                yield return $"{setting.Path} is no setting; the settings here are {string.Join(", ", names)}";
            }
            else if (property.PropertyType.Namespace == options.Namespace)
            {
                foreach (string error in In(setting, property.PropertyType))
                {
                    yield return error;
                }
            }
        }
    }
}
