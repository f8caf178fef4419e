using System.Text.Json;
using System.Text.Json.Serialization;
using BoothWatch.Film;

namespace BoothWatch.Service.Commands.Advise;

/// <summary>A mix by solvent volume fractions, as a file of <c>--mix</c> gives it.</summary>
internal sealed record MixFile
{
    /// <summary>How far the fractions may be from a sum of 1.</summary>
    public const double SumTolerance = 0.001;

    private static readonly JsonSerializerOptions Reading = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        ReadCommentHandling = JsonCommentHandling.Skip,
        AllowTrailingCommas = true,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        AllowDuplicateProperties = false,
    };

    /// <summary>Volume fraction of each solvent in the whole mix, by solvent id.</summary>
    [JsonRequired]
    public required Dictionary<string, double> Solvents { get; init; }

    /// <summary>Volume fraction of everything that stays.</summary>
    [JsonRequired]
    public required double PolymerVolumeFraction { get; init; }

    /// <summary>A substrate id, or an object with thicknessM, conductivityWPerMK and volumetricHeatCapacityJPerM3K; absent: the default substrate.</summary>
    public JsonElement? Substrate { get; init; }

    /// <summary>Wet film, µm; absent: by kind of coat.</summary>
    public double? WetFilmUm { get; init; }

    /// <summary>What it is, for people; absent: the name of the file.</summary>
    public string? Name { get; init; }

    /// <summary>Id of the substrate; null when the file gives none, or an object.</summary>
    [JsonIgnore]
    public string? SubstrateId => Substrate is { ValueKind: JsonValueKind.String } id ? id.GetString() : null;

    /// <summary>The substrate that the file describes itself; null when it does not.</summary>
    [JsonIgnore]
    public Substrate? OwnSubstrate { get; private init; }

    /// <summary>Reads a file.</summary>
    /// <exception cref="InvalidDataException">The file is wrong; the message says where and what to write.</exception>
    public static MixFile Read(string path)
    {
        try
        {
            using FileStream stream = File.OpenRead(path);
            MixFile mix = JsonSerializer.Deserialize<MixFile>(stream, Reading) ?? throw new InvalidDataException("the file is empty");
            mix.Check();
            return mix with { Name = mix.Name ?? Path.GetFileName(path), OwnSubstrate = mix.ReadSubstrate() };
        }
        catch (JsonException problem)
        {
            string where = problem.LineNumber is { } line ? $" in line {line + 1}" : "";
            throw new InvalidDataException($"it is not a mix{where}: {problem.Message}", problem);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw new InvalidDataException(problem.Message, problem);
        }
    }

    private void Check()
    {
        if (Solvents.Count == 0)
        {
            throw new InvalidDataException("solvents is empty; name at least one, for example \"n-butyl acetate\": 0.92");
        }

        foreach ((string id, double fraction) in Solvents)
        {
            Require(fraction is > 0 and <= 1, $"solvents: \"{id}\" is {fraction:0.####}; give a volume fraction above 0 and up to 1");
        }

        Require(PolymerVolumeFraction is >= 0.001 and < 0.5, $"polymerVolumeFraction is {PolymerVolumeFraction:0.####}; give a fraction from 0.001 to below 0.5, where the film would be set already");
        double sum = Solvents.Values.Sum() + PolymerVolumeFraction;
        Require(Math.Abs(sum - 1) <= SumTolerance, $"the fractions of solvents and polymer sum to {sum:0.####}; they must sum to 1 within {SumTolerance}");
        Require(WetFilmUm is null || (WetFilmUm >= Measures.WetFilm.Least && WetFilmUm <= Measures.WetFilm.Most), $"wetFilmUm is {WetFilmUm:0.####}; give 10 to 300 µm");
    }

    private Substrate? ReadSubstrate()
    {
        switch (Substrate)
        {
            case null or { ValueKind: JsonValueKind.String or JsonValueKind.Null }:
                return null;
            case { ValueKind: JsonValueKind.Object } body:
                SubstrateBody read = body.Deserialize<SubstrateBody>(Reading)!;
                Require(read.ThicknessM is >= 0.0001 and <= 0.2, $"substrate: thicknessM is {read.ThicknessM:0.######}; give 0.0001 to 0.2 m");
                Require(read.ConductivityWPerMK is >= 0.01 and <= 500, $"substrate: conductivityWPerMK is {read.ConductivityWPerMK:0.####}; give 0.01 to 500 W/(m K)");
                Require(read.VolumetricHeatCapacityJPerM3K is >= 1e4 and <= 1e7, $"substrate: volumetricHeatCapacityJPerM3K is {read.VolumetricHeatCapacityJPerM3K:0.####}; give 10000 to 10000000 J/(m³ K)");
                return new Substrate(read.Name ?? "substrate of the mix file", read.ThicknessM, read.ConductivityWPerMK, read.VolumetricHeatCapacityJPerM3K);
            default:
                throw new InvalidDataException("substrate is neither an id such as \"glass\" nor an object with thicknessM, conductivityWPerMK and volumetricHeatCapacityJPerM3K");
        }
    }

    private static void Require(bool good, FormattableString message)
    {
        if (!good)
        {
            throw new InvalidDataException(FormattableString.Invariant(message));
        }
    }

    private sealed record SubstrateBody(
        [property: JsonRequired] double ThicknessM,
        [property: JsonRequired] double ConductivityWPerMK,
        [property: JsonRequired] double VolumetricHeatCapacityJPerM3K,
        string? Name = null);
}
