using BoothWatch.Readings;

namespace BoothWatch.Verdicts.Rules;

/// <summary>Without a trusted temperature and humidity of the booth air there is no dew point: wait, with the cause.</summary>
public sealed class BoothAirKnown : IRule
{
    /// <inheritdoc />
    public string Name => "booth-air-unknown";

    /// <inheritdoc />
    public IEnumerable<Reason> Judge(Evidence evidence)
    {
        Reading temperature = evidence[Quantity.BoothTemperature];
        Reading humidity = evidence[Quantity.BoothHumidity];
        if (!temperature.IsGood && !humidity.IsGood && SensorAdvice.Cause(temperature) == SensorAdvice.Cause(humidity))
        {
            // One part gives both: say it once.
            yield return Reason("no booth temperature and humidity", temperature);
            yield break;
        }

        if (!temperature.IsGood)
        {
            yield return Reason("no booth temperature", temperature);
        }

        if (!humidity.IsGood)
        {
            yield return Reason("no booth humidity", humidity);
        }

        if (temperature.IsGood && humidity.IsGood && !IsUsable(evidence.Air))
        {
            yield return new Reason(
                Name, Verdict.Wait, "the dew point of this air could not be worked out", "wait, and check the booth sensor", RuleOrder.BoothAir);
        }
    }

    private static bool IsUsable(AirFindings? air) =>
        air is not null
        && double.IsFinite(air.DewPointC)
        && double.IsFinite(air.TemperatureC)
        && double.IsFinite(air.RelativeHumidityPct);

    private Reason Reason(string what, Reading reading) => new(
        Name, Verdict.Wait, $"{what} ({SensorAdvice.Cause(reading)})", SensorAdvice.Action(reading), RuleOrder.BoothAir);
}
