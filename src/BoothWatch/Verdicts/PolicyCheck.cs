using System.Collections.Immutable;
using System.Globalization;
using System.Reflection;
using System.Text.Json;

namespace BoothWatch.Verdicts;

/// <summary>Checks a policy as it came from the configuration: every number in its range, and the limits in order.</summary>
public static class PolicyCheck
{
    /// <summary>All errors, each with the full key, the value, the allowed range and the fix; empty when the policy may be used.</summary>
    public static ImmutableArray<string> Errors(VerdictPolicy policy) =>
        [.. RangeErrors(policy), .. OrderErrors(policy)];

    /// <summary>The numbers of the policy with their limits, in the order of the file.</summary>
    public static IEnumerable<(string Key, double Default, PolicyLimitAttribute Limit)> Limits()
    {
        VerdictPolicy defaults = new();
        return Numbers().Select(number => (Key(number.Property.Name), (double)number.Property.GetValue(defaults)!, number.Limit));
    }

    private static IEnumerable<(PropertyInfo Property, PolicyLimitAttribute Limit)> Numbers() =>
        from property in typeof(VerdictPolicy).GetProperties()
        let limit = property.GetCustomAttribute<PolicyLimitAttribute>()
        where limit is not null
        select (property, limit);

    private static IEnumerable<string> RangeErrors(VerdictPolicy policy)
    {
        foreach ((PropertyInfo property, PolicyLimitAttribute limit) in Numbers())
        {
            double value = (double)property.GetValue(policy)!;
            // Written so that a value that is not a number is an error too.
            if (!(value >= limit.Least && value <= limit.Most))
            {
                double example = (double)property.GetValue(new VerdictPolicy())!;
                yield return string.Create(
                    CultureInfo.InvariantCulture,
                    $"{Key(property.Name)} is {value}; give a number from {limit.Least} to {limit.Most} ({limit.Unit}), for example {example}");
            }
        }
    }

    private static IEnumerable<string> OrderErrors(VerdictPolicy policy)
    {
        (string Name, double Value)[] temperatures =
        [
            (nameof(VerdictPolicy.WaitBelowTemperatureC), policy.WaitBelowTemperatureC),
            (nameof(VerdictPolicy.SlowDownBelowTemperatureC), policy.SlowDownBelowTemperatureC),
            (nameof(VerdictPolicy.SlowDownAboveTemperatureC), policy.SlowDownAboveTemperatureC),
            (nameof(VerdictPolicy.WaitAboveTemperatureC), policy.WaitAboveTemperatureC),
        ];
        for (int i = 1; i < temperatures.Length; i++)
        {
            if (temperatures[i].Value <= temperatures[i - 1].Value)
            {
                yield return string.Create(
                    CultureInfo.InvariantCulture,
                    $"{Key(temperatures[i].Name)} is {temperatures[i].Value}; give a number above {Key(temperatures[i - 1].Name)}, which is {temperatures[i - 1].Value}");
            }
        }
    }

    private static string Key(string property) => $"{VerdictPolicy.Section}:{JsonNamingPolicy.CamelCase.ConvertName(property)}";
}
