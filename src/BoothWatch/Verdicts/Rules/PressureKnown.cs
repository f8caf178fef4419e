using BoothWatch.Readings;

namespace BoothWatch.Verdicts.Rules;

/// <summary>
/// Air pressure matters little to blush, so a booth without a barometer takes the pressure of its altitude and says so.
/// A barometer that is there and fails asks for care.
/// </summary>
public sealed class PressureKnown : IRule
{
    /// <inheritdoc />
    public string Name => "pressure-assumed";

    /// <inheritdoc />
    public IEnumerable<Reason> Judge(Evidence evidence)
    {
        Reading pressure = evidence[Quantity.StationPressure];
        if (pressure.IsGood)
        {
            yield break;
        }

        if (evidence.HasNoSensor(Quantity.StationPressure))
        {
            yield return new Reason(
                Name, Verdict.Spray, "air pressure taken from the altitude", "nothing to do", RuleOrder.Pressure);
        }
        else
        {
            yield return new Reason(
                Name,
                Verdict.SlowDown,
                $"no air pressure ({SensorAdvice.Cause(pressure, evidence.Text)}), taken from the altitude",
                $"check sensor {pressure.Sensor}",
                RuleOrder.Pressure);
        }
    }
}
