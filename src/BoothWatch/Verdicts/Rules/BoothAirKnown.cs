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
        if (!temperature.IsGood && !humidity.IsGood && SensorAdvice.Cause(temperature, evidence.Text) == SensorAdvice.Cause(humidity, evidence.Text))
        {
            // One part gives both: say it once.
            yield return Reason("no booth temperature and humidity", temperature, evidence.Text);
            yield break;
        }

        if (!temperature.IsGood)
        {
            yield return Reason("no booth temperature", temperature, evidence.Text);
        }

        if (!humidity.IsGood)
        {
            yield return Reason("no booth humidity", humidity, evidence.Text);
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

    private Reason Reason(string what, Reading reading, TemperatureText text) => new(
        Name, Verdict.Wait, $"{what} ({SensorAdvice.Cause(reading, text)})", SensorAdvice.Action(reading), RuleOrder.BoothAir);
}
