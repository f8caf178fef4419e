namespace BoothWatch.Service.Jobs;

/// <summary>Where an entry was made, as the journal keeps it.</summary>
public static class EntrySource
{
    /// <summary>The page, or a program that asked the same address.</summary>
    public const string Page = "page";

    /// <summary>The button at the booth.</summary>
    public const string Button = "button";

    /// <summary>A command by MQTT.</summary>
    public const string Mqtt = "mqtt";

    /// <summary>The demo's own past; no shop ever sprayed it.</summary>
    public const string Demo = "demo";
}
