using BoothWatch.Alerts;
using BoothWatch.Verdicts;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Outputs.Alerts;

/// <summary>
/// Looks at each assessment for what is worth telling somebody, keeps it in the journal together with the messages, and wakes the
/// dispatcher. It hangs behind a pump like every output; what carries messages away is further off still.
/// </summary>
internal sealed class AlertOutput(
    AlertStore store, AlertDispatcher dispatcher, IEnumerable<IAlertChannel> channels, AlertSources sources, IOptions<AlertsOptions> options, TimeProvider time)
    : IAssessmentOutput
{
    private readonly IAlertChannel[] _channels = [.. channels];
    private readonly long _start = time.GetTimestamp();
    private AlertState? _state;

    /// <inheritdoc/>
    public string Name => "alerts";

    /// <summary>True while somebody is spraying, as far as can be seen.</summary>
    public bool IsSession => _state?.Session.IsActive ?? false;

    /// <inheritdoc/>
    public Task HandleAsync(Assessment assessment, CancellationToken cancellationToken)
    {
        cancellationToken.ThrowIfCancellationRequested();
        if (!options.Value.Enabled)
        {
            return Task.CompletedTask;
        }

        AlertMoment moment = new()
        {
            Now = time.GetElapsedTime(_start),
            Assessment = assessment,
            Jobs = sources.Jobs(),
            Zone = time.LocalTimeZone,
        };
        AlertLimits limits = sources.PolicyNow is { } policy ? sources.Limits with { Policy = policy() } : sources.Limits;
        AlertStep step = AlertRules.Step(_state ?? AlertState.Resume(store.Open()), moment, limits);
        if (step.Changes.Length > 0)
        {
            store.Enter(step.Changes, time.GetUtcNow(), Targets());
            dispatcher.Wake();
        }

        // Only now: a step that could not be kept is taken again.
        _state = step.After;
        return Task.CompletedTask;
    }

    private (string Channel, string Target)[] Targets() =>
        [.. _channels.Where(channel => channel.OffBecause is null).SelectMany(channel => channel.Targets().Select(target => (channel.Name, target)))];
}
