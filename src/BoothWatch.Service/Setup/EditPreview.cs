using BoothWatch.Service.Configuration;

namespace BoothWatch.Service.Setup;

/// <summary>What a change of the configuration file would do.</summary>
/// <param name="After">The file as it would read; as it is when the change cannot be made.</param>
/// <param name="Changes">Every setting that would read differently.</param>
/// <param name="Errors">Why it would be refused; empty when it would be written.</param>
internal sealed record EditPreview(ConfigurationFile After, IReadOnlyList<SettingChange> Changes, IReadOnlyList<string> Errors);
