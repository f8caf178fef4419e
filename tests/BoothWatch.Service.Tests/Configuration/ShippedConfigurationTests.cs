using BoothWatch.Service.Configuration;
using Microsoft.Extensions.Configuration;

namespace BoothWatch.Service.Tests.Configuration;

public class ShippedConfigurationTests
{
    private static readonly string ShippedPath = Path.Combine(RepositoryFile.Root, "config", "boothwatch.json");

    public static TheoryData<string> Sections => [.. ConfigurationSections.All.Select(section => section.Key)];

    [Theory]
    [MemberData(nameof(Sections))]
    public void EverySetting_IsInTheShippedFile(string section)
    {
        IConfigurationSection shipped = ConfigurationFile.Read(ShippedPath).Configuration.GetSection(section);
        IEnumerable<string> known = ConfigurationSections.All[section].SelectMany(type => SettingShape.KeysOf(type).Keys);

        Assert.Equal(known.Order(), shipped.GetChildren().Select(child => child.Key).Order());
    }

    [Theory]
    [MemberData(nameof(Sections))]
    public void EveryValue_IsTheDefaultThatItsCommentStates(string section)
    {
        // What the shipped file says must be what holds without a file; the sensors' addresses are written out though they may be left out.
        string[] shipped = Lines(ConfigurationFile.Read(ShippedPath).Configuration, section);
        string[] defaults = Lines(new ConfigurationBuilder().Build(), section);

        Assert.Equal(defaults, shipped);
    }

    private static string[] Lines(IConfiguration configuration, string section) =>
    [
        .. EffectiveConfiguration.Lines(configuration)
            .Where(line => line.StartsWith($"{section}:", StringComparison.OrdinalIgnoreCase) && !line.Contains(":address = ", StringComparison.Ordinal)),
    ];
}
