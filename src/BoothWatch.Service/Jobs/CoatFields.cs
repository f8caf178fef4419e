using BoothWatch.Jobs;
using BoothWatch.Service.Materials;

namespace BoothWatch.Service.Jobs;

/// <summary>Reads the fields of a coat; what is not given stays as in the coat that it starts given.</summary>
internal static class CoatFields
{
    public static CoatDetails Read(JobFields fields, CoatDetails given, MaterialCatalogue catalogue, DateTimeOffset now) => given with
    {
        Kind = fields.Word("kind", CoatWords.Kinds) ?? given.Kind,
        Mix = new CoatMix(
            fields.Known("lacquer", catalogue.Lacquers.Keys, given.Mix.Lacquer)!,
            fields.Number("lacquerParts", 0.01, 100, given.Mix.LacquerParts, "parts by volume"),
            fields.Known("thinner", catalogue.Thinners.Keys, given.Mix.Thinner)!,
            fields.Number("thinnerParts", 0, 100, given.Mix.ThinnerParts, "parts by volume"),
            fields.Known("retarder", catalogue.Retarders.Keys, given.Mix.Retarder)!,
            fields.Number("retarderPct", 0, 30, given.Mix.RetarderPct, "% by volume of the unretarded mix")),
        WetFilmUm = fields.Number("wetFilmUm", 10, 300, given.WetFilmUm, "µm"),
        Substrate = fields.Known("substrate", catalogue.Substrates.Keys, given.Substrate)!,
        AirSpeedMPerS = fields.Number("airSpeedMPerS", 0, 5, given.AirSpeedMPerS, "m/s"),
        Start = fields.Time("start", now) ?? given.Start,
        Stop = fields.Time("stop", now) ?? (fields.IsNull("stop") ? null : given.Stop),
    };
}
