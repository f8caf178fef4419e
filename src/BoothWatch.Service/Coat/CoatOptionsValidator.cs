using System.Globalization;
using BoothWatch.Service.Configuration;
using BoothWatch.Service.Materials;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Coat;

/// <summary>Checks the <c>coat</c> section.</summary>
/// <param name="catalogue">The materials; null when they could not be read, which is an error of its own.</param>
internal sealed class CoatOptionsValidator(MaterialCatalogue? catalogue = null) : IValidateOptions<CoatOptions>
{
    public ValidateOptionsResult Validate(string? name, CoatOptions options)
    {
        var errors = new List<string>();
        if (!Enum.IsDefined(options.Kind))
        {
            errors.Add($"{CoatOptions.Section}:kind is {options.Kind}; give one of flash, clear, colour, sealer");
        }

        Check("lacquerParts", options.LacquerParts, 0.01, 100, "parts", 1);
        Check("thinnerParts", options.ThinnerParts, 0, 100, "parts", 4);
        Check("loadedRetarderPct", options.LoadedRetarderPct, 0, 30, "%", 5);
        Check("retarderHighestPct", options.RetarderHighestPct, 0, 30, "%", 15);
        Check("retarderStepPct", options.RetarderStepPct, 0.5, 10, "%", 1);
        Check("wetFilmUm", options.WetFilmUm, 10, 300, "µm", 75);
        Check("pieceThicknessMm", options.PieceThicknessMm, 0.5, 300, "mm", 40);
        Check("airSpeedMPerS", options.AirSpeedMPerS, 0, 5, "m/s", 0.5);
        Check("cupMl", options.CupMl, 10, 20_000, "mL", 250);
        if (catalogue is not null)
        {
            CheckId("lacquer", options.Lacquer, catalogue.Lacquers.Keys);
            CheckId("thinner", options.Thinner, catalogue.Thinners.Keys);
            CheckId("retarder", options.Retarder, catalogue.Retarders.Keys);
            CheckId("substrate", options.Substrate, catalogue.Substrates.Keys);
        }

        return errors.Count == 0 ? ValidateOptionsResult.Success : ValidateOptionsResult.Fail(errors);

        void Check(string key, double? value, double least, double most, string unit, double example)
        {
            if (value is { } number && !(number >= least && number <= most))
            {
                errors.Add(string.Create(
                    CultureInfo.InvariantCulture,
                    $"{CoatOptions.Section}:{key} is {number}; give a number from {least} to {most} ({unit}), for example {example}"));
            }
        }

        void CheckId(string key, string? id, IEnumerable<string> known)
        {
            if (id is not null && !known.Contains(id, StringComparer.OrdinalIgnoreCase))
            {
                errors.Add($"{CoatOptions.Section}:{key} is \"{id}\", which is not in config/materials; {NearestName.Hint(id, known)}");
            }
        }
    }
}
