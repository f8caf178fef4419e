using BoothWatch.Air;
using BoothWatch.Service.Coat;

namespace BoothWatch.Service.Advice;

/// <summary>What <c>advise</c> takes where an argument is not given: the shop's own settings.</summary>
/// <param name="PressurePa">Station pressure at the booth's height, Pa.</param>
/// <param name="Coat">The coat section of the configuration.</param>
internal sealed record AdviseDefaults(double PressurePa, CoatOptions Coat)
{
    /// <summary>Tolerance (±) of the temperatures, °C.</summary>
    public const double TemperatureToleranceC = 0.2;

    /// <summary>Tolerance (±) of the humidity, percentage points.</summary>
    public const double HumidityTolerancePct = 2;

    /// <summary>The defaults that a configuration gives.</summary>
    public static AdviseDefaults From(BoothOptions booth, CoatOptions coat) => new(StationPressure.AtAltitude(booth.AltitudeM), coat);
}
