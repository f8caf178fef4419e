using System.Reflection;
using BoothWatch.Verdicts;
using NetArchTest.Rules;

namespace BoothWatch.Tests.Architecture;

public class FolderDependenciesTests
{
    private static readonly Assembly Library = typeof(Verdict).Assembly;

    [Fact]
    public void Library_Folders_KnowOnlyWhatLiesBeforeThemInTheDataFlow() =>
        Assert.Empty(FolderDependencies.Violations(Library, "BoothWatch"));

    [Fact]
    public void Rule_OnASpecimenThatBreaksIt_Fires() =>
        Assert.Contains(
            "BoothWatch.Tests.Architecture.Specimen.Air.AirThatKnowsTheFilm",
            FolderDependencies.Violations(typeof(FolderDependenciesTests).Assembly, "BoothWatch.Tests.Architecture.Specimen"));

    [Fact]
    public void Library_EveryFolder_HasARule()
    {
        IEnumerable<string> folders = Library.GetTypes()
            .Where(type => type.Namespace?.StartsWith("BoothWatch.", StringComparison.Ordinal) == true)
            .Select(type => type.Namespace!.Split('.')[1])
            .Distinct();

        Assert.Empty(folders.Except(FolderDependencies.Allowed.Keys));
    }

    [Theory]
    [InlineData("System.IO")]
    [InlineData("System.Net")]
    [InlineData("System.TimeProvider")]
    [InlineData("System.Threading.Tasks")]
    [InlineData("System.Console")]
    [InlineData("Microsoft")]
    [InlineData("Serilog")]
    [InlineData("UnitsNet")]
    public void Library_KnowsNo(string outside) =>
        Assert.Empty(Types.InAssembly(Library)
            .That().ResideInNamespace("BoothWatch")
            .ShouldNot().HaveDependencyOn(outside)
            .GetResult().FailingTypeNames ?? []);

    [Fact]
    public void Library_HasNoPackages() =>
        Assert.All(
            Library.GetReferencedAssemblies(),
            reference => Assert.True(
                reference.Name!.StartsWith("System.", StringComparison.Ordinal) || reference.Name == "netstandard",
                $"BoothWatch references {reference.Name}"));
}
