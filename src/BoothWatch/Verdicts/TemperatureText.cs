using System.Globalization;
using BoothWatch.Film;
using BoothWatch.Readings;

namespace BoothWatch.Verdicts;

/// <summary>Writes temperatures and temperature differences for people: one decimal, decimal point, with the unit.</summary>
/// <param name="Unit">The unit to write.</param>
public readonly record struct TemperatureText(TemperatureUnit Unit)
{
    private const double SmallestShown = 0.1;

    /// <summary>A temperature, for example <c>17.8 °C</c> or <c>64.0 °F</c>.</summary>
    public string Of(double temperatureC) => Number(Unit.FromCelsius(temperatureC));

    /// <summary>A cause, with its temperatures in the unit.</summary>
    public string Of(Cause cause)
    {
        ArgumentNullException.ThrowIfNull(cause);
        TemperatureUnit unit = Unit;
        return cause.Words(degrees =>
        {
            double value = degrees.IsDifference ? unit.FromCelsiusDifference(degrees.Celsius) : unit.FromCelsius(degrees.Celsius);
            return string.Create(CultureInfo.InvariantCulture, $"{value:0.##}{(degrees.IsBare ? "" : $" {unit.Symbol()}")}");
        });
    }

    /// <summary>Why the film model has no answer, with its temperatures in the unit.</summary>
    public string Of(DryingFailedException failed)
    {
        ArgumentNullException.ThrowIfNull(failed);
        return failed is OutsideModelException { IsTemperature: true } outside
            ? Of(new Cause(
                $"outside the range of the drying-film model: {outside.What} is {new Degrees(outside.Value)}, the model holds from {new Degrees(outside.Lowest, IsBare: true)} to {new Degrees(outside.Highest)}"))
            : failed.Message;
    }

    /// <summary>A temperature to be reached, rounded up: who reaches what is written has reached it.</summary>
    public string AtLeast(double temperatureC) => Number(Math.Ceiling(Math.Round(Unit.FromCelsius(temperatureC) * 10, 6)) / 10);

    /// <summary>
    /// The size of a temperature difference, without its sign, for example <c>0.6 °C</c>.
    /// What would round to nothing reads <c>less than 0.1 °C</c>, so that a reason never says "0.0 over".
    /// </summary>
    public string By(double differenceC)
    {
        double size = Unit.FromCelsiusDifference(Math.Abs(differenceC));
        return size < SmallestShown / 2 ? $"less than {Number(SmallestShown)}" : Number(size);
    }

    private string Number(double value)
    {
        // Math.Round first and add zero: a value such as -0.04 must not be written "-0.0".
        double rounded = Math.Round(value, 1, MidpointRounding.AwayFromZero) + 0.0;
        return string.Create(CultureInfo.InvariantCulture, $"{rounded:0.0} {Unit.Symbol()}");
    }
}
