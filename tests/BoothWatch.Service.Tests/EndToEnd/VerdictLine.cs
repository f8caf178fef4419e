using System.Globalization;
using BoothWatch.Service.Outputs.Light;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Tests.EndToEnd;

/// <summary>One change of the verdict: the shop's clock, the verdict, the rule of its first reason, and the lamp that is lit.</summary>
internal sealed record VerdictLine(TimeSpan Time, Verdict Verdict, string Rule, Lamp Lamp)
{
    private const char Comment = '#';
    private const string ClockFormat = @"hh\:mm";

    /// <summary>Reads lines as <see cref="ToString"/> writes them; comments and empty lines are passed over.</summary>
    public static IReadOnlyList<VerdictLine> Parse(string text) =>
    [
        .. text.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
            .Where(line => !line.StartsWith(Comment))
            .Select(line => line.Split('|', StringSplitOptions.TrimEntries))
            .Select(part => new VerdictLine(
                TimeSpan.ParseExact(part[0], ClockFormat, CultureInfo.InvariantCulture),
                Enum.GetValues<Verdict>().Single(verdict => verdict.Word() == part[1]),
                part[2],
                Enum.Parse<Lamp>(part[3], ignoreCase: true))),
    ];

    /// <summary>True when only the time differs, and by no more than <paramref name="tolerance"/>.</summary>
    public bool IsNear(VerdictLine other, TimeSpan tolerance) =>
        this with { Time = other.Time } == other && (Time - other.Time).Duration() <= tolerance;

    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Time.ToString(ClockFormat, CultureInfo.InvariantCulture)} | {Verdict.Word(),-9} | {Rule,-20} | {Lamp.ToString().ToLowerInvariant()}");
}
