using BoothWatch.Verdicts;

namespace BoothWatch.Service.Outputs.Pump;

/// <summary>Hands each assessment to every output's pump.</summary>
/// <param name="pumps">All registered pumps.</param>
public sealed class AssessmentFanOut(IEnumerable<OutputPump> pumps)
{
    private readonly OutputPump[] _pumps = [.. pumps];

    /// <summary>How every output is doing, in the order of registration.</summary>
    public IReadOnlyList<OutputHealth> Health => [.. _pumps.Select(pump => pump.Health)];

    /// <summary>Hands over an assessment. Never blocks and never throws.</summary>
    public void Post(Assessment assessment)
    {
        foreach (OutputPump pump in _pumps)
        {
            pump.Post(assessment);
        }
    }
}
