namespace BoothWatch.Service.Setup;

/// <summary>A setting.</summary>
/// <param name="Key">Its full key.</param>
/// <param name="Value">The value in the file, or the default.</param>
/// <param name="Running">The value that the program runs with.</param>
/// <param name="FromEnvironment">True when an environment variable overrides the file.</param>
public sealed record SetupSetting(string Key, object? Value, object? Running, bool FromEnvironment)
{
    /// <summary>True when the file says something else than the program runs with.</summary>
    public bool WaitsForStart => !Equals(Value, Running);
}
