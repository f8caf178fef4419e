using System.Reflection;
using NetArchTest.Rules;

namespace BoothWatch.Service.Tests.Architecture;

/// <summary>Who may know whom in the service. Sensors know no output, an output knows no other output and no film model.</summary>
internal static class ServiceDependencies
{
    /// <summary>Shared by all outputs, so no output itself.</summary>
    private const string Pump = "Pump";

    /// <summary>The types below <paramref name="root"/> that know what they may not know.</summary>
    /// <param name="assembly">Where they are.</param>
    /// <param name="root">Namespace of the service.</param>
    /// <param name="library">Namespace of the pure library.</param>
    public static IReadOnlyList<string> Violations(Assembly assembly, string root, string library)
    {
        string[] outputs = OutputsOf(assembly, root);
        List<string> violations =
        [
            .. Knowing(assembly, $"{root}.Sensors", [.. outputs, $"{root}.Assessing", $"{library}.Film", $"{library}.Verdicts"]),
            .. Knowing(assembly, $"{root}.Assessing", [.. outputs, $"{root}.Checks", $"{root}.Outlook"]),
        ];
        foreach (string output in outputs)
        {
            string[] forbidden = [.. outputs.Where(other => other != output), $"{library}.Film", $"{root}.Assessing"];
            violations.AddRange(Knowing(assembly, output, forbidden));
        }

        return violations;
    }

    /// <summary>Every output: a folder under Outputs, and the page.</summary>
    public static string[] OutputsOf(Assembly assembly, string root) =>
    [
        .. assembly.GetTypes()
            .Select(type => type.Namespace)
            .OfType<string>()
            .Where(name => name.StartsWith($"{root}.Outputs.", StringComparison.Ordinal) && name != $"{root}.Outputs.{Pump}")
            .Select(name => string.Join('.', name.Split('.').Take(root.Split('.').Length + 2)))
            .Append($"{root}.Page")
            .Distinct(),
    ];

    private static IEnumerable<string> Knowing(Assembly assembly, string folder, string[] forbidden) =>
        Types.InAssembly(assembly)
            .That().ResideInNamespace(folder)
            .ShouldNot().HaveDependencyOnAny(forbidden)
            .GetResult().FailingTypeNames ?? [];
}
