using BoothWatch.Readings;

namespace BoothWatch.Service.Assessing;

/// <summary>Why a sensor may not be used, whatever it reads.</summary>
/// <param name="Quality">What its readings are instead of good: <see cref="ReadingQuality.BeingChecked"/>, for all that it measures, or
/// <see cref="ReadingQuality.FailedCheck"/>, for its humidity.</param>
/// <param name="Cause">Why, in words a finisher understands.</param>
/// <param name="SpareMayStandIn">True when another sensor of the same air may take its place.</param>
public sealed record SensorHold(ReadingQuality Quality, string Cause, bool SpareMayStandIn)
{
    /// <summary>True when the hold is on a quantity.</summary>
    public bool Covers(Quantity quantity) =>
        Quality == ReadingQuality.BeingChecked || quantity is Quantity.BoothHumidity or Quantity.IntakeHumidity;
}
