using BoothWatch.Verdicts;

namespace BoothWatch.Service.Outputs;

/// <summary>
/// Something that shows or stores assessments. It runs behind its own bounded pump, so it may be slow;
/// it throws on failure, and the pump alone catches, counts and backs off.
/// </summary>
public interface IAssessmentOutput
{
    /// <summary>Name in logs and on the page, for example <c>series</c>.</summary>
    string Name { get; }

    /// <summary>What waits for it, where that is not its queue; null: the queue. Asked on every look at its health, so it must be cheap.</summary>
    OutputBacklog? Backlog => null;

    /// <summary>Handles one assessment. Assessments arrive in order; some are skipped when the output is too slow.</summary>
    Task HandleAsync(Assessment assessment, CancellationToken cancellationToken);
}
