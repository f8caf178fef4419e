namespace BoothWatch.Service.Outputs.Alerts;

/// <summary>What a message is.</summary>
public enum AlertMessageType
{
    /// <summary>Something is the matter.</summary>
    Alert,

    /// <summary>It is over.</summary>
    Clear,

    /// <summary>Somebody tries whether messages arrive.</summary>
    Test,
}
