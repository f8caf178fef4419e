using BoothWatch.Readings;

namespace BoothWatch.Service.Checks;

/// <summary>One held sensor in the file of holds.</summary>
/// <param name="Sensor">Its configured name.</param>
/// <param name="Quality">Being checked, or failed.</param>
/// <param name="Since">When the check was begun, or the result that failed was taken, UTC.</param>
/// <param name="SpareMayStandIn">True when a second sensor may take its place.</param>
internal sealed record HoldLine(string Sensor, ReadingQuality Quality, DateTimeOffset Since, bool SpareMayStandIn)
{
    /// <summary>Id of the salt over which it failed; null while it is being checked.</summary>
    public string? Salt { get; init; }

    /// <summary>What and where the part is, as its sensor describes it; null when not known.</summary>
    public string? Part { get; init; }
}
