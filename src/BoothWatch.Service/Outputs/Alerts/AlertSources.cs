using BoothWatch.Alerts;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Outputs.Alerts;

/// <summary>What alerts are told about beside the assessment. The composition root fills it.</summary>
public sealed record AlertSources
{
    /// <summary>Name of the shop.</summary>
    public required string Shop { get; init; }

    /// <summary>Name of the booth.</summary>
    public required string Booth { get; init; }

    /// <summary>The limits of the rules, with the limits of the verdict that the settings give.</summary>
    public required AlertLimits Limits { get; init; }

    /// <summary>The limits of the verdict that hold now; null for those in <see cref="Limits"/>. Called at every assessment, so it must be cheap.</summary>
    public Func<VerdictPolicy>? PolicyNow { get; init; }

    /// <summary>Folder for files of the service's own, beside the journal.</summary>
    public required string Folder { get; init; }

    /// <summary>The running jobs; null while they are not known. Called at every assessment, so it must be cheap.</summary>
    public Func<IReadOnlyList<WatchedJob>?> Jobs { get; init; } = () => [];
}
