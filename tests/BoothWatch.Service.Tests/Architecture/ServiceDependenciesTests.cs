using System.Reflection;

namespace BoothWatch.Service.Tests.Architecture;

public class ServiceDependenciesTests
{
    private static readonly Assembly Service = typeof(BoothHost).Assembly;

    [Fact]
    public void Service_Folders_KnowOnlyWhatTheyMay() =>
        Assert.Empty(ServiceDependencies.Violations(Service, "BoothWatch.Service", "BoothWatch"));

    [Fact]
    public void Service_ItsOutputs_AreFound() =>
        Assert.Superset(
            new HashSet<string> { "BoothWatch.Service.Outputs.Light", "BoothWatch.Service.Outputs.Series", "BoothWatch.Service.Page" },
            ServiceDependencies.OutputsOf(Service, "BoothWatch.Service").ToHashSet());

    [Fact]
    public void Rule_OnASpecimenThatBreaksIt_Fires() =>
        Assert.Contains(
            "BoothWatch.Service.Tests.Architecture.Specimen.Outputs.Lamp.LampThatKnowsTheBell",
            ServiceDependencies.Violations(
                typeof(ServiceDependenciesTests).Assembly, "BoothWatch.Service.Tests.Architecture.Specimen", "BoothWatch"));
}
