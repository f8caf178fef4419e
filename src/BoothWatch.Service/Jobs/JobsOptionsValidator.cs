using System.Globalization;
using BoothWatch.Service.Sensors.Emulation;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Jobs;

/// <summary>Checks the <c>jobs</c> section.</summary>
/// <param name="schedules">The schedules; null when they could not be read, which is an error of its own.</param>
internal sealed class JobsOptionsValidator(ScheduleBook? schedules = null) : IValidateOptions<JobsOptions>
{
    public ValidateOptionsResult Validate(string? name, JobsOptions options)
    {
        List<string> errors = [];
        if (options.ButtonPin is < 0 or >= VirtualGpioDriver.Pins)
        {
            errors.Add($"{JobsOptions.Section}:buttonPin is {options.ButtonPin}; give a GPIO number from 0 to {VirtualGpioDriver.Pins - 1}, for example 24, or leave it out");
        }

        if (options.ButtonSource is not ("emulated" or "real"))
        {
            errors.Add($"{JobsOptions.Section}:buttonSource is \"{options.ButtonSource}\"; give emulated or real");
        }

        if (!(options.ButtonDebounceMs is >= 5 and <= 500))
        {
            errors.Add(string.Create(
                CultureInfo.InvariantCulture, $"{JobsOptions.Section}:buttonDebounceMs is {options.ButtonDebounceMs}; give a number from 5 to 500 (ms), for example 50"));
        }

        if (schedules is not null && options.DefaultSchedule is { Length: > 0 } id && !schedules.Schedules.ContainsKey(id))
        {
            errors.Add($"{JobsOptions.Section}:defaultSchedule is \"{id}\", which is not in config/schedules; give one of {string.Join(", ", schedules.Schedules.Keys.Order())}, or null");
        }

        return errors.Count == 0 ? ValidateOptionsResult.Success : ValidateOptionsResult.Fail(errors);
    }
}
