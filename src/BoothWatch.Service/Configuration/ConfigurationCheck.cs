using System.Reflection;
using BoothWatch.Service.Materials;
using BoothWatch.Service.Sensors;

namespace BoothWatch.Service.Configuration;

/// <summary>Checks a whole configuration and gathers every error, each naming the key, the value and the fix.</summary>
public static class ConfigurationCheck
{
    /// <summary>All that is wrong; empty when the configuration is good.</summary>
    /// <param name="file">The file as read.</param>
    /// <param name="sections">Look at these sections only; null: all of them, and at unknown ones.</param>
    public static IReadOnlyList<string> Errors(ConfigurationFile file, params string[]? sections)
    {
        ArgumentNullException.ThrowIfNull(file);
        if (file.Errors.Count > 0)
        {
            return file.Errors;
        }

        var errors = new List<string>();
        var unusable = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        foreach (IConfigurationSection section in file.Configuration.GetChildren().Where(s => IsAsked(s.Key, sections)))
        {
            Type[] types = [.. ConfigurationSections.All[section.Key]];
            if (types.Length == 0)
            {
                errors.Add($"{section.Key} is not a section; {NearestName.Hint(section.Key, ConfigurationSections.All.Select(s => s.Key))}");
                continue;
            }

            CheckObject(section, types, errors, unusable);
        }

        // What cannot be read is left out, so that the validators still see all the rest.
        IConfiguration usable = new ConfigurationBuilder()
            .AddInMemoryCollection(file.Configuration.AsEnumerable().Where(pair => !unusable.Contains(pair.Key)))
            .Build();
        IServiceCollection known = new ServiceCollection().AddSingleton(file).AddSingleton(usable).AddSensing();
        try
        {
            known.AddSingleton(MaterialsLoader.Load(file.MaterialsFolder));
        }
        catch (MaterialsException problem)
        {
            errors.AddRange(problem.Errors);
        }

        using ServiceProvider services = known.BuildServiceProvider();
        foreach (Type type in ConfigurationSections.All.Where(s => IsAsked(s.Key, sections)).SelectMany(s => s))
        {
            errors.AddRange(ConfigurationSections.Validate(services, type, ConfigurationSections.Bind(usable, type)));
        }

        return [.. errors.Distinct()];
    }

    private static bool IsAsked(string section, string[]? sections) =>
        sections is null || sections.Length == 0 || sections.Contains(section, StringComparer.OrdinalIgnoreCase);

    private static void CheckObject(IConfigurationSection section, Type[] types, List<string> errors, HashSet<string> unusable)
    {
        if (!string.IsNullOrEmpty(section.Value))
        {
            errors.Add($"{section.Path} is \"{section.Value}\"; it holds settings: write \"{section.Key}\": {{ ... }}");
            unusable.Add(section.Path);
            return;
        }

        var keys = types
            .SelectMany(type => SettingShape.KeysOf(type).Select(key => (key.Key, key.Value, Defaults: Activator.CreateInstance(type))))
            .ToLookup(key => key.Key, StringComparer.OrdinalIgnoreCase);
        foreach (IConfigurationSection child in section.GetChildren())
        {
            if (!keys.Contains(child.Key))
            {
                errors.Add($"{child.Path} is not a setting; {NearestName.Hint(child.Key, keys.Select(key => key.Key))}");
                continue;
            }

            (_, PropertyInfo property, object? defaults) = keys[child.Key].First();
            CheckSetting(child, property.PropertyType, defaults is null ? null : property.GetValue(defaults), errors, unusable);
        }
    }

    private static void CheckSetting(IConfigurationSection setting, Type type, object? fallback, List<string> errors, HashSet<string> unusable)
    {
        bool holdsMore = setting.GetChildren().Any();
        if (SettingShape.IsValue(type))
        {
            if (holdsMore)
            {
                errors.Add($"{setting.Path} holds settings or a list; give {SettingShape.Wanted(type, fallback)}");
                unusable.UnionWith(setting.AsEnumerable().Select(pair => pair.Key));
            }
            else if (setting.Value is null && fallback is string)
            {
                // Only words would take the null; everything else keeps its default.
                errors.Add($"{setting.Path} is null; give {SettingShape.Wanted(type, fallback)}, or leave it out");
                unusable.Add(setting.Path);
            }
            else if (setting.Value is { } text && !SettingShape.Reads(type, text))
            {
                errors.Add($"{setting.Path} is \"{text}\"; give {SettingShape.Wanted(type, fallback)}");
                unusable.Add(setting.Path);
            }
        }
        else if (SettingShape.EntryOf(type) is { } entry)
        {
            if (!holdsMore && !string.IsNullOrEmpty(setting.Value))
            {
                errors.Add($"{setting.Path} is \"{setting.Value}\"; give a list of entries");
                unusable.Add(setting.Path);
            }

            foreach (IConfigurationSection child in setting.GetChildren())
            {
                CheckSetting(child, entry, null, errors, unusable);
            }
        }
        else
        {
            CheckObject(setting, [type], errors, unusable);
        }
    }
}
