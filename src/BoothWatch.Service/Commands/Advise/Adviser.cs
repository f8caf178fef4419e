using BoothWatch.Service.Coat;
using BoothWatch.Service.Configuration;

namespace BoothWatch.Service.Commands.Advise;

/// <summary>Answers questions with the physics and the rules of the booth.</summary>
internal sealed class Adviser(AdviseDefaults defaults)
{
    /// <summary>The sections of the configuration that it reads.</summary>
    public static readonly string[] Sections = [BoothOptions.Section, CoatOptions.Section, "verdict"];

    public static Adviser From(ConfigurationFile file) => new(AdviseDefaults.From(
        (BoothOptions)ConfigurationSections.Bind(file.Configuration, typeof(BoothOptions)),
        (CoatOptions)ConfigurationSections.Bind(file.Configuration, typeof(CoatOptions))));

    /// <summary>The answer, or null and what is wrong with the question.</summary>
    public AdviseAnswer? Answer(IReadOnlyDictionary<string, string> given, out IReadOnlyList<ArgumentError> errors)
    {
        AdviseRequest? request = AdviseRequestParser.Parse(defaults, given, out errors);
        return request is null ? null : throw new NotImplementedException();
    }
}
