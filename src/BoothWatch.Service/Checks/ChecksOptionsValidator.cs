using System.Globalization;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Checks;

/// <summary>Checks the <c>checks</c> section.</summary>
internal sealed class ChecksOptionsValidator : IValidateOptions<ChecksOptions>
{
    public ValidateOptionsResult Validate(string? name, ChecksOptions options)
    {
        ChecksOptions usual = new();
        List<string> errors = [];
        Check("intervalMonths", options.IntervalMonths, 1, 24, usual.IntervalMonths, "months");
        Check("jarHours", options.JarHours, 0.5, 72, usual.JarHours, "hours");
        Check("jarSteadyMinutes", options.JarSteadyMinutes, 10, 600, usual.JarSteadyMinutes, "minutes");
        Check("jarHumidityPct", options.JarHumidityPct, 0.1, 2, usual.JarHumidityPct, "% of relative humidity");
        Check("jarTemperatureC", options.JarTemperatureC, 0.1, 1, usual.JarTemperatureC, "°C");
        Check("gradientC", options.GradientC, 0.05, 2, usual.GradientC, "°C");
        Check("backMinutes", options.BackMinutes, 5, 240, usual.BackMinutes, "minutes");
        Check("backHumidityPct", options.BackHumidityPct, 0.3, 5, usual.BackHumidityPct, "% of relative humidity");
        return errors.Count == 0 ? ValidateOptionsResult.Success : ValidateOptionsResult.Fail(errors);

        void Check(string key, double value, double least, double most, double example, string unit)
        {
            if (!(value >= least && value <= most))
            {
                errors.Add(string.Create(
                    CultureInfo.InvariantCulture, $"{ChecksOptions.Section}:{key} is {value}; give a number from {least} to {most} ({unit}), for example {example}"));
            }
        }
    }
}
