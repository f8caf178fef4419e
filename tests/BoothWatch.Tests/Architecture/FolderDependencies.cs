using System.Reflection;
using NetArchTest.Rules;

namespace BoothWatch.Tests.Architecture;

/// <summary>Who may know whom in the pure library. Data flows one way, and so do the references.</summary>
internal static class FolderDependencies
{
    /// <summary>Each folder with the folders that it may know.</summary>
    public static readonly IReadOnlyDictionary<string, string[]> Allowed = new Dictionary<string, string[]>
    {
        ["Readings"] = [],
        ["Air"] = [],
        ["Solvents"] = [],
        ["Film"] = ["Air", "Solvents"],
        ["Warming"] = ["Readings", "Air", "Solvents", "Film"],
        ["Verdicts"] = ["Readings", "Air", "Solvents", "Film", "Warming"],
        ["Checks"] = ["Readings", "Air"],
        ["Limits"] = ["Film"],
        ["Outlook"] = ["Readings", "Air"],
        ["Jobs"] = ["Readings", "Air", "Solvents", "Film", "Verdicts"],
        ["Records"] = ["Readings", "Air", "Solvents", "Film", "Verdicts", "Jobs"],
        ["Reviews"] = ["Readings", "Air", "Solvents", "Film", "Verdicts", "Jobs"],
        ["Alerts"] = ["Readings", "Outlook", "Verdicts", "Jobs"],
    };

    /// <summary>The types below <paramref name="root"/> that know a folder which they may not know.</summary>
    public static IReadOnlyList<string> Violations(Assembly assembly, string root) =>
    [
        .. from folder in Allowed
           let forbidden = Allowed.Keys.Except(folder.Value).Where(other => other != folder.Key)
               .Select(other => $"{root}.{other}").ToArray()
           from type in Types.InAssembly(assembly)
               .That().ResideInNamespace($"{root}.{folder.Key}")
               .ShouldNot().HaveDependencyOnAny(forbidden)
               .GetResult().FailingTypeNames ?? []
           select type,
    ];
}
