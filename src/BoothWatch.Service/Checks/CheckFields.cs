using BoothWatch.Checks;

namespace BoothWatch.Service.Checks;

/// <summary>What an entry carries; what does not belong to its step is null. Part of the file format: names stay.</summary>
internal sealed record CheckFields
{
    /// <summary>Id of the salt: in the jar.</summary>
    public string? Salt { get; init; }

    /// <summary>The result.</summary>
    public CheckResult? Result { get; init; }

    /// <summary>Begun: true when a second sensor that agreed may stand in.</summary>
    public bool? SpareMayStandIn { get; init; }

    /// <summary>Back: true when the results do not count.</summary>
    public bool? Cancelled { get; init; }

    /// <summary>Back: true when somebody was asked again, because the reading was still that of the jar.</summary>
    public bool? Certain { get; init; }

    /// <summary>Begun: what and where the part is.</summary>
    public string? Part { get; init; }
}
