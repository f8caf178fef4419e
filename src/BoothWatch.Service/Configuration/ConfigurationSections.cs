using System.Reflection;
using BoothWatch.Verdicts;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Configuration;

/// <summary>
/// Every section that the configuration may have. A section is a class of the service or of the pure library with a
/// <c>public const string Section</c>, so a new feature's section is known here without being listed.
/// </summary>
public static class ConfigurationSections
{
    /// <summary>Options class of each section, by section name; one section may be read by several classes.</summary>
    public static ILookup<string, Type> All { get; } = new[] { typeof(ConfigurationSections).Assembly, typeof(VerdictPolicy).Assembly }
        .SelectMany(assembly => assembly.GetTypes())
        .Where(type => type is { IsClass: true, IsAbstract: false } && type.GetConstructor(Type.EmptyTypes) is not null)
        .Select(type => (Type: type, Section: NameOf(type)))
        .Where(found => found.Section is not null)
        .ToLookup(found => found.Section!, found => found.Type, StringComparer.OrdinalIgnoreCase);

    /// <summary>Binds the section of one options class.</summary>
    public static object Bind(IConfiguration configuration, Type optionsType)
    {
        ArgumentNullException.ThrowIfNull(configuration);
        ArgumentNullException.ThrowIfNull(optionsType);
        object options = Activator.CreateInstance(optionsType)!;
        configuration.GetSection(NameOf(optionsType)!).Bind(options);
        return options;
    }

    /// <summary>What the validators of an options class say of it; empty when it is good.</summary>
    public static IEnumerable<string> Validate(IServiceProvider services, Type optionsType, object options)
    {
        Type contract = typeof(IValidateOptions<>).MakeGenericType(optionsType);
        MethodInfo validate = contract.GetMethod(nameof(IValidateOptions<object>.Validate))!;
        return typeof(ConfigurationSections).Assembly.GetTypes()
            .Where(type => !type.IsAbstract && type.IsAssignableTo(contract))
            .Select(type => ActivatorUtilities.CreateInstance(services, type))
            .Select(validator => (ValidateOptionsResult)validate.Invoke(validator, [null, options])!)
            .Where(result => result.Failed)
            .SelectMany(result => result.Failures ?? []);
    }

    private static string? NameOf(Type type) =>
        type.GetField("Section", BindingFlags.Public | BindingFlags.Static) is { IsLiteral: true, FieldType: var kind } field && kind == typeof(string)
            ? (string)field.GetRawConstantValue()!
            : null;
}
