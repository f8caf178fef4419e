using BoothWatch.Air;
using BoothWatch.Film;
using BoothWatch.Service.Coat;

namespace BoothWatch.Service.Advice;

/// <summary>One question to <c>advise</c>, every value filled in.</summary>
internal sealed record AdviseRequest
{
    /// <summary>The air.</summary>
    public required MoistAir Air { get; init; }

    /// <summary>Surface temperature of the piece, °C.</summary>
    public required double PieceC { get; init; }

    /// <summary>The coat, parts and film included.</summary>
    public required CoatOptions Coat { get; init; }

    /// <summary>The mix file as read; null: lacquer and thinner by parts.</summary>
    public required MixFile? Mix { get; init; }

    /// <summary>A substrate of the mix file's own; null: the one that <see cref="Coat"/> names.</summary>
    public required Substrate? Substrate { get; init; }

    /// <summary>Tolerance (±) of the temperatures, °C.</summary>
    public required double TemperatureToleranceC { get; init; }

    /// <summary>Tolerance (±) of the humidity, percentage points.</summary>
    public required double HumidityTolerancePct { get; init; }

    /// <summary>What was assumed because it was not given, in words; shown with the answer.</summary>
    public required IReadOnlyList<string> Assumed { get; init; }
}
