using BoothWatch.Film;

namespace BoothWatch.Service.Coat;

/// <summary>What is in the cup and what it goes on. Materials are named by their ids in config/materials.</summary>
public sealed record CoatOptions
{
    /// <summary>Section of the configuration.</summary>
    public const string Section = "coat";

    /// <summary>Kind of coat: flash, clear, colour or sealer; default clear.</summary>
    public CoatKind Kind { get; set; } = CoatKind.Clear;

    /// <summary>Lacquer, an id; null: by the kind of coat (<see cref="CoatHabits"/>).</summary>
    public string? Lacquer { get; set; }

    /// <summary>Thinner, an id; default <c>ordinary thinner</c>.</summary>
    public string Thinner { get; set; } = "ordinary thinner";

    /// <summary>Retarder, an id; default <c>2-butoxyethanol</c>.</summary>
    public string Retarder { get; set; } = "2-butoxyethanol";

    /// <summary>What the film lies on, an id; default <c>wood</c>.</summary>
    public string Substrate { get; set; } = "wood";

    /// <summary>Thickness of the whole piece, mm, 0.5 to 300: says how long a cold one takes to warm; null: that of <see cref="Substrate"/>. The
    /// film is reckoned with the substrate alone.</summary>
    public double? PieceThicknessMm { get; set; }

    /// <summary>Parts of lacquer by volume, above 0 to 100; null: by the kind of coat.</summary>
    public double? LacquerParts { get; set; }

    /// <summary>Parts of thinner by volume, 0 to 100; null: by the kind of coat.</summary>
    public double? ThinnerParts { get; set; }

    /// <summary>Retarder already in the cup, % by volume of the unretarded mix, 0 to 30; null: not mixed yet, so the recommended level holds.</summary>
    public double? LoadedRetarderPct { get; set; }

    /// <summary>Highest level of the shop's retarder ladder, %, 0 to 30; null: the highest level of the retarder in config/materials.</summary>
    public double? RetarderHighestPct { get; set; }

    /// <summary>Step of the ladder, %, 0.5 to 10; default 1.</summary>
    public double RetarderStepPct { get; set; } = 1;

    /// <summary>Wet film thickness, µm, 10 to 300; null: by the kind of coat.</summary>
    public double? WetFilmUm { get; set; }

    /// <summary>Air speed over the piece, m/s, 0 to 5; default 0.5.</summary>
    public double AirSpeedMPerS { get; set; } = 0.5;

    /// <summary>Unretarded mix in the cup, mL, 10 to 20000; default 250.</summary>
    public double CupMl { get; set; } = 250;
}
