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
        Check("jarHumidityChangePct", options.JarHumidityChangePct, 0.1, 2, usual.JarHumidityChangePct, "% of relative humidity");
        Check("jarTemperatureChangeC", options.JarTemperatureChangeC, 0.1, 1, usual.JarTemperatureChangeC, "°C");
        Check("gradientC", options.GradientC, 0.05, 2, usual.GradientC, "°C");
        Check("backSteadyMinutes", options.BackSteadyMinutes, 5, 240, usual.BackSteadyMinutes, "minutes");
        Check("backHumidityChangePct", options.BackHumidityChangePct, 0.3, 5, usual.BackHumidityChangePct, "% of relative humidity");
        if (options.JarSteadyMinutes > 60 * options.JarHours)
        {
            errors.Add(string.Create(
                CultureInfo.InvariantCulture,
                $"{ChecksOptions.Section}:jarSteadyMinutes is {options.JarSteadyMinutes}, longer than {ChecksOptions.Section}:jarHours ({options.JarHours}); raise jarHours, or give at most {60 * options.JarHours}"));
        }

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
