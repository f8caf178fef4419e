using System.Diagnostics.Metrics;
using BoothWatch.Service.Outputs.Pump;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Outputs.Metrics;

/// <summary>
/// The latest assessment and the health of the outputs as gauges and counters, for whoever scrapes <c>/metrics</c>. A figure that
/// is not known, or too old, is absent: a scraper must never take an old one for the present.
/// </summary>
public sealed class MetricsOutput : IAssessmentOutput, IDisposable
{
    /// <summary>Name of the meter.</summary>
    public const string MeterName = "BoothWatch.Outputs";

    /// <summary>An assessment older than this is not shown. The same limit as on the page.</summary>
    public static readonly TimeSpan StaleAfter = TimeSpan.FromSeconds(5);

    private readonly TimeProvider _time;
    private readonly Func<IReadOnlyList<OutputHealth>> _health;
    private readonly KeyValuePair<string, object?>[] _place;
    private readonly Meter _meter;
    private Latest? _latest;

    /// <summary>Gauges for one booth.</summary>
    public MetricsOutput(BoothPlace place, Func<IReadOnlyList<OutputHealth>> health, TimeProvider time)
    {
        (_time, _health) = (time, health);
        _place = [new("shop", place.Shop), new("booth", place.Booth)];
        _meter = new Meter(MeterName);

        Figure("boothwatch.air.temperature", "Cel", "Air temperature in the booth.", a => a.Air?.TemperatureC);
        Figure("boothwatch.air.humidity", "%", "Relative humidity in the booth, over water.", a => a.Air?.RelativeHumidityPct);
        Figure("boothwatch.air.dew_point", "Cel", "Dew point of the booth air.", a => a.Air?.DewPointC);
        Figure("boothwatch.blush.margin", "Cel", "By how much the dew point may rise before this coat blushes.", a => a.Film?.BlushMarginC);
        _meter.CreateObservableGauge("boothwatch.verdict", Verdicts, null, "1 for the verdict that holds, 0 for the others. Advice about the finish only.");

        Health("boothwatch.output.working", null, "1 while the output works, 0 while its last attempt failed.", h => h.IsFailing ? 0 : 1);
        Health("boothwatch.output.backlog", null, "What waits for the output.", h => h.Queued);
        Health("boothwatch.output.backlog.age", "s", "Age of the oldest of what waits.", h => h.OldestWaiting?.TotalSeconds ?? 0);
        Health("boothwatch.output.set_aside", null, "What the receiver refused for good.", h => h.SetAside);
        Count("boothwatch.output.handled", "What the output handled since start.", h => h.Handled);
        Count("boothwatch.output.dropped", "What was lost to the output since start.", h => h.Dropped);
        Count("boothwatch.output.failures", "Failed attempts since start.", h => h.Failures);
    }

    /// <inheritdoc/>
    public string Name => "metrics";

    /// <inheritdoc/>
    public Task HandleAsync(Assessment assessment, CancellationToken cancellationToken)
    {
        Volatile.Write(ref _latest, new Latest(assessment, _time.GetTimestamp()));
        return Task.CompletedTask;
    }

    /// <inheritdoc/>
    public void Dispose() => _meter.Dispose();

    private Assessment? Current() =>
        Volatile.Read(ref _latest) is { } latest && _time.GetElapsedTime(latest.Arrived) <= StaleAfter ? latest.Assessment : null;

    private void Figure(string name, string unit, string description, Func<Assessment, double?> value) =>
        _meter.CreateObservableGauge(
            name,
            () => Current() is { } assessment && value(assessment) is { } figure && double.IsFinite(figure)
                ? [new Measurement<double>(figure, _place)]
                : Array.Empty<Measurement<double>>(),
            unit,
            description);

    private IEnumerable<Measurement<long>> Verdicts() => Current() is { } assessment
        ? Enum.GetValues<Verdict>().Select(verdict =>
            new Measurement<long>(verdict == assessment.Verdict ? 1 : 0, [.. _place, new("verdict", verdict.Word())]))
        : [];

    private void Health(string name, string? unit, string description, Func<OutputHealth, double> value) =>
        _meter.CreateObservableGauge(name, () => _health().Select(h => new Measurement<double>(value(h), TagsOf(h))), unit, description);

    private void Count(string name, string description, Func<OutputHealth, long> value) =>
        _meter.CreateObservableCounter(name, () => _health().Select(h => new Measurement<long>(value(h), TagsOf(h))), null, description);

    private KeyValuePair<string, object?>[] TagsOf(OutputHealth health) => [.. _place, new("output", health.Name)];

    private sealed record Latest(Assessment Assessment, long Arrived);
}
