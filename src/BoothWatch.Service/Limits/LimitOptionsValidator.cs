using System.Globalization;
using BoothWatch.Service.Configuration;
using BoothWatch.Verdicts;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Limits;

/// <summary>Checks the <c>limit</c> section.</summary>
/// <param name="configuration">The configuration: floor and ceiling enclose the required margin, which stands in another section.</param>
internal sealed class LimitOptionsValidator(IConfiguration configuration) : IValidateOptions<LimitOptions>
{
    public const string DayFormat = "yyyy-MM-dd";

    public ValidateOptionsResult Validate(string? name, LimitOptions options)
    {
        double requiredC = ((VerdictPolicy)ConfigurationSections.Bind(configuration, typeof(VerdictPolicy))).RequiredMarginC;
        LimitOptions usual = new();
        List<string> errors = [];
        Check("floorC", options.FloorC, 0, requiredC, Math.Min(usual.FloorC, requiredC), "°C, at most verdict:requiredMarginC");
        Check("ceilingC", options.CeilingC, requiredC, 10, Math.Max(usual.CeilingC, requiredC), "°C, at least verdict:requiredMarginC");
        Check("leastCoats", options.LeastCoats, 10, 1000, usual.LeastCoats, "coats");
        Check("leastCloseDays", options.LeastCloseDays, 2, 100, usual.LeastCloseDays, "days");
        Check("leastJudgedPct", options.LeastJudgedPct, 10, 100, usual.LeastJudgedPct, "%");
        Check("leastBlushed", options.LeastBlushed, 2, 20, usual.LeastBlushed, "coats");
        Check("windowDays", options.WindowDays, 30, 3660, usual.WindowDays, "days");
        if (options.Since is { Length: > 0 } since && !DateOnly.TryParseExact(since, DayFormat, CultureInfo.InvariantCulture, DateTimeStyles.None, out _))
        {
            errors.Add($"{LimitOptions.Section}:since is \"{since}\"; give a day as {DayFormat}, for example 2026-03-31, or leave it empty");
        }

        return errors.Count == 0 ? ValidateOptionsResult.Success : ValidateOptionsResult.Fail(errors);

        void Check(string key, double value, double least, double most, double example, string unit)
        {
            if (!(value >= least && value <= most))
            {
                errors.Add(string.Create(
                    CultureInfo.InvariantCulture, $"{LimitOptions.Section}:{key} is {value}; give a number from {least} to {most} ({unit}), for example {example}"));
            }
        }
    }
}
