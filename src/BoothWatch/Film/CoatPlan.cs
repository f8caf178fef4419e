using BoothWatch.Air;
using BoothWatch.Solvents;

namespace BoothWatch.Film;

/// <summary>The coat about to be sprayed: what goes into the cup, how thick it goes on, and on what.</summary>
public sealed record CoatPlan
{
    /// <summary>What is in the cup, for people, for example <c>clear coat, 1 part lacquer to 1 part thinner, 2-butoxyethanol as retarder</c>.</summary>
    public required string Description { get; init; }

    /// <summary>Unretarded mix in the cup, mL; the retarder comes on top of it.</summary>
    public required double CupMl { get; init; }

    /// <summary>Kind of coat.</summary>
    public required CoatKind Kind { get; init; }

    /// <summary>The mix at each retarder level of the shop's ladder, least first. Key: retarder, % by volume of the unretarded mix.</summary>
    public required IReadOnlyList<(double RetarderPct, Mix Mix)> Ladder { get; init; }

    /// <summary>Retarder level in the cup now, % by volume of the unretarded mix; null: not mixed yet, so take the recommended one.</summary>
    public required double? LoadedRetarderPct { get; init; }

    /// <summary>Wet film thickness as it lands, µm.</summary>
    public required double WetFilmUm { get; init; }

    /// <summary>What the film lies on.</summary>
    public required Substrate Substrate { get; init; }

    /// <summary>Thickness of the whole piece, m; null: that of <see cref="Substrate"/>. It says how long the piece takes to warm; the film knows
    /// the substrate alone.</summary>
    public double? PieceThicknessM { get; init; }

    /// <summary>The piece as a body that has to warm.</summary>
    public Substrate Body => PieceThicknessM is { } thicknessM ? Substrate with { ThicknessM = thicknessM } : Substrate;

    /// <summary>Air speed over the piece, m/s.</summary>
    public required double AirSpeedMPerS { get; init; }

    /// <summary>The conditions of a drying run of this coat.</summary>
    /// <param name="mix">The mix, one of the ladder.</param>
    /// <param name="air">The air.</param>
    /// <param name="pieceTemperatureC">Temperature of the piece, °C.</param>
    public CoatConditions ConditionsOf(Mix mix, MoistAir air, double pieceTemperatureC)
    {
        ArgumentNullException.ThrowIfNull(air);
        return new()
        {
            Mix = mix,
            WetFilmUm = WetFilmUm,
            Substrate = Substrate,
            AirSpeedMPerS = AirSpeedMPerS,
            AirTemperatureC = air.TemperatureC,
            PressurePa = air.PressurePa,
            PieceTemperatureC = pieceTemperatureC,
        };
    }
}
