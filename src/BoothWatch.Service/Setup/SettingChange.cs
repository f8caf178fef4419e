namespace BoothWatch.Service.Setup;

/// <summary>A setting that a change of the file would give another value.</summary>
/// <param name="Key">Its full key.</param>
/// <param name="Before">What the file says now, for people.</param>
/// <param name="After">What it would say.</param>
public sealed record SettingChange(string Key, string Before, string After);
