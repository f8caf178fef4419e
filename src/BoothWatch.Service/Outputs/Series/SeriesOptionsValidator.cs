using System.Globalization;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Outputs.Series;

/// <summary>Gathers every error of the <c>series</c> section, each with the key, the value, the range and an example.</summary>
public sealed class SeriesOptionsValidator : IValidateOptions<SeriesOptions>
{
    /// <inheritdoc/>
    public ValidateOptionsResult Validate(string? name, SeriesOptions options)
    {
        var errors = new List<string>();
        if (options.Folder is null || options.Folder.AsSpan().ContainsAny(Path.GetInvalidPathChars()))
        {
            errors.Add("series:folder is not a path; give a folder that the service may write to, for example /var/lib/boothwatch, or leave it empty");
        }

        Range(errors, "rawDays", options.RawDays, 1, 3660, "days", "21");
        Range(errors, "unshippedDays", options.UnshippedDays, 1, 3660, "days", "90");
        Range(errors, "minuteYears", options.MinuteYears, 1, 100, "years", "5");
        Range(errors, "syncEveryS", options.SyncEveryS, 0, 300, "seconds", "10");
        if (options.MinuteYears * 365.0 < options.RawDays)
        {
            errors.Add(string.Create(CultureInfo.InvariantCulture,
                $"series:rawDays is {options.RawDays}, longer than series:minuteYears ({options.MinuteYears}); give at most {options.MinuteYears * 365} days, for example 21"));
        }

        return errors.Count == 0 ? ValidateOptionsResult.Success : ValidateOptionsResult.Fail(errors);
    }

    private static void Range(List<string> errors, string key, double value, double least, double most, string unit, string example)
    {
        if (!(value >= least && value <= most))
        {
            errors.Add(string.Create(CultureInfo.InvariantCulture,
                $"series:{key} is {value}; give {unit} from {least} to {most}, for example {example}"));
        }
    }
}
