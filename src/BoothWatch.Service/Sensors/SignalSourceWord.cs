namespace BoothWatch.Service.Sensors;

/// <summary>The word that names a <see cref="SignalSource"/> in the configuration, of sensors and of outputs.</summary>
internal static class SignalSourceWord
{
    /// <summary>The source that a setting names, in any case; null when the word is none.</summary>
    public static SignalSource? Parse(string? word) => word?.ToLowerInvariant() switch
    {
        "emulated" => SignalSource.Emulated,
        "real" => SignalSource.Real,
        _ => null,
    };
}
