namespace BoothWatch.Service.Sensors;

/// <summary>Settings of sensors that are words.</summary>
internal static class Settings
{
    /// <summary>The source that the options name; null when the word is none.</summary>
    public static SignalSource? SourceOf(SensorOptions options) => options.Source switch
    {
        "emulated" => SignalSource.Emulated,
        "real" => SignalSource.Real,
        _ => null,
    };
}
