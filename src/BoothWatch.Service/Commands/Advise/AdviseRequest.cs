using BoothWatch.Air;
using BoothWatch.Film;

namespace BoothWatch.Service.Commands.Advise;

/// <summary>One question to <c>advise</c>, every value filled in.</summary>
internal sealed record AdviseRequest
{
    /// <summary>The air.</summary>
    public required MoistAir Air { get; init; }

    /// <summary>Surface temperature of the piece, °C.</summary>
    public required double PieceC { get; init; }

    /// <summary>Kind of coat.</summary>
    public required CoatKind Coat { get; init; }

    /// <summary>Parts of lacquer by volume.</summary>
    public required double LacquerParts { get; init; }

    /// <summary>Parts of thinner by volume.</summary>
    public required double ThinnerParts { get; init; }

    /// <summary>Retarder in the cup, %; null: not mixed yet.</summary>
    public required double? RetarderPct { get; init; }

    /// <summary>Wet film, µm.</summary>
    public required double WetFilmUm { get; init; }

    /// <summary>Air speed, m/s.</summary>
    public required double AirSpeedMPerS { get; init; }

    /// <summary>Unretarded mix in the cup, mL.</summary>
    public required double CupMl { get; init; }

    /// <summary>Id of the lacquer.</summary>
    public required string Lacquer { get; init; }

    /// <summary>Id of the thinner.</summary>
    public required string Thinner { get; init; }

    /// <summary>Id of the retarder.</summary>
    public required string Retarder { get; init; }

    /// <summary>Id of the substrate; null when the mix file describes it.</summary>
    public required string? Substrate { get; init; }

    /// <summary>The mix file as read; null: lacquer and thinner by parts.</summary>
    public required MixFile? Mix { get; init; }

    /// <summary>Tolerance (±) of the temperatures, °C.</summary>
    public required double TemperatureToleranceC { get; init; }

    /// <summary>Tolerance (±) of the humidity, percentage points.</summary>
    public required double HumidityTolerancePct { get; init; }

    /// <summary>What was assumed because it was not given, in words; shown with the answer.</summary>
    public required IReadOnlyList<string> Assumed { get; init; }
}
