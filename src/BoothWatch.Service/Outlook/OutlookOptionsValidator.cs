using System.Globalization;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Outlook;

/// <summary>Checks the <c>outlook</c> section.</summary>
internal sealed class OutlookOptionsValidator : IValidateOptions<OutlookOptions>
{
    public const string TimeFormat = @"hh\:mm";
    private static readonly TimeSpan EarliestEnd = TimeSpan.FromMinutes(30);

    public ValidateOptionsResult Validate(string? name, OutlookOptions options)
    {
        OutlookOptions usual = new();
        List<string> errors = [];
        Check("windowDays", options.WindowDays, 15, 120, "days", usual.WindowDays);
        Check("everyMinutes", options.EveryMinutes, 1, 60, "minutes", usual.EveryMinutes);
        if (!TimeSpan.TryParseExact(options.DayEndsAt, TimeFormat, CultureInfo.InvariantCulture, out TimeSpan end) || end < EarliestEnd)
        {
            errors.Add($"{OutlookOptions.Section}:dayEndsAt is \"{options.DayEndsAt}\"; give a time from 00:30 to 23:59 as hh:mm, for example {usual.DayEndsAt}");
        }

        return errors.Count == 0 ? ValidateOptionsResult.Success : ValidateOptionsResult.Fail(errors);

        void Check(string key, double value, double least, double most, string unit, double example)
        {
            if (!(value >= least && value <= most))
            {
                errors.Add(string.Create(
                    CultureInfo.InvariantCulture, $"{OutlookOptions.Section}:{key} is {value}; give a number from {least} to {most} ({unit}), for example {example}"));
            }
        }
    }
}
