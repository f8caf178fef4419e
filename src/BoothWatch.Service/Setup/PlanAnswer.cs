namespace BoothWatch.Service.Setup;

/// <summary>What a choice of sensors would change in the configuration file.</summary>
/// <param name="Changes">Every setting that would read differently.</param>
/// <param name="Errors">What the check of the configuration says against it; empty when it may be written.</param>
/// <param name="Notes">What it means for the verdict and the light.</param>
public sealed record PlanAnswer(IReadOnlyList<SettingChange> Changes, IReadOnlyList<string> Errors, IReadOnlyList<string> Notes);
