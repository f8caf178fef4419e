using BoothWatch.Readings;

namespace BoothWatch.Service.Sensors;

/// <summary>One measured value as the sensor gave it, before any judgement.</summary>
/// <param name="Quantity">What was measured; fixes the unit.</param>
/// <param name="Value">The value in the unit of the quantity.</param>
/// <param name="StandardUncertainty">Standard uncertainty (k = 1) from the part's data sheet, same unit.</param>
public sealed record Sample(Quantity Quantity, double Value, double StandardUncertainty)
{
    /// <summary>Time since the value was measured, when the sensor was asked. Zero for a part that measures when asked.</summary>
    public TimeSpan Age { get; init; }
}
