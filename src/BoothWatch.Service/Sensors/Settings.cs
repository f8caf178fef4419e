namespace BoothWatch.Service.Sensors;

/// <summary>Settings of sensors and outputs that are words.</summary>
internal static class Settings
{
    /// <summary>The source that a setting names, in any case; null when the word is none.</summary>
    public static SignalSource? SourceOf(string? word) => word?.ToLowerInvariant() switch
    {
        "emulated" => SignalSource.Emulated,
        "real" => SignalSource.Real,
        _ => null,
    };
}
