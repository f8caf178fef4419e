using System.Globalization;
using System.Text.Json;
using BoothWatch.Film;
using BoothWatch.Service.Configuration;

namespace BoothWatch.Service.Advice;

/// <summary>Reads a mix file and gathers all that is wrong with it, each with the key, the value and the fix.</summary>
internal sealed class MixFileReader
{
    private static readonly JsonDocumentOptions Parsing = new() { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true };
    private static readonly string[] Keys = ["name", "polymerVolumeFraction", "solvents", "substrate", "wetFilmUm"];
    private static readonly string[] SubstrateKeys = ["conductivityWPerMK", "name", "thicknessM", "volumetricHeatCapacityJPerM3K"];

    private readonly List<string> _errors = [];

    private MixFileReader()
    {
    }

    /// <summary>Reads a file.</summary>
    /// <param name="path">The file.</param>
    /// <param name="errors">All that is wrong; empty when the mix is good.</param>
    /// <returns>The mix; null when anything is wrong.</returns>
    public static MixFile? Read(string path, out IReadOnlyList<string> errors)
    {
        var reader = new MixFileReader();
        errors = reader._errors;
        try
        {
            using FileStream stream = File.OpenRead(path);
            using JsonDocument document = JsonDocument.Parse(stream, Parsing);
            MixFile? mix = reader.Mix(document.RootElement, Path.GetFileName(path));
            return errors.Count == 0 ? mix : null;
        }
        catch (JsonException problem)
        {
            string where = problem.LineNumber is { } line ? string.Create(CultureInfo.InvariantCulture, $", line {line + 1}") : "";
            reader._errors.Add($"it is not valid JSON (comments and trailing commas are allowed){where}: {problem.Message}");
        }
        catch (Exception problem) when (problem is FileNotFoundException or DirectoryNotFoundException)
        {
            reader._errors.Add("there is no such file; give the path of a mix file, from the folder that the command runs in, for example --mix mix.json (docs/advise.md shows one)");
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            reader._errors.Add(Directory.Exists(path) ? "that is a folder; give the file in it, for example --mix mix.json" : $"it cannot be read: {problem.Message}");
        }

        return null;
    }

    private MixFile? Mix(JsonElement root, string fileName)
    {
        if (root.ValueKind != JsonValueKind.Object)
        {
            _errors.Add(root.ValueKind == JsonValueKind.Null ? "the file is empty" : "it is not an object; write { \"solvents\": { ... }, \"polymerVolumeFraction\": 0.08 }");
            return null;
        }

        Dictionary<string, JsonElement> given = Entries(root, "", Keys);
        Dictionary<string, double> solvents = Solvents(given);
        double? polymer = Number(given, "", "polymerVolumeFraction", 0.001, Math.BitDecrement(0.5), "a fraction from 0.001 to below 0.5, where the film would be set already", required: true);
        double sum = solvents.Values.Sum() + (polymer ?? 0);
        if (_errors.Count == 0 && Math.Abs(sum - 1) > MixFile.SumTolerance)
        {
            Add($"the fractions of solvents and polymer sum to {sum:0.####}; they must sum to 1 within {MixFile.SumTolerance}");
        }

        double? wetFilm = Number(given, "", "wetFilmUm", Measures.WetFilm.Least, Measures.WetFilm.Most, "10 to 300 µm", required: false);
        (string? substrateId, Substrate? own) = SubstrateOf(given);
        return new MixFile
        {
            Solvents = solvents,
            PolymerVolumeFraction = polymer ?? 0,
            WetFilmUm = wetFilm,
            Name = Text(given, "name") ?? fileName,
            SubstrateId = substrateId,
            OwnSubstrate = own,
        };
    }

    private Dictionary<string, double> Solvents(Dictionary<string, JsonElement> given)
    {
        var solvents = new Dictionary<string, double>();
        if (!given.TryGetValue("solvents", out JsonElement list) || list.ValueKind != JsonValueKind.Object)
        {
            _errors.Add("solvents is missing or no object; give the volume fraction of each, for example \"solvents\": { \"n-butyl acetate\": 0.92 }");
            return solvents;
        }

        Dictionary<string, JsonElement> entries = Entries(list, "solvents: ", known: null);
        if (entries.Count == 0)
        {
            _errors.Add("solvents is empty; name at least one, for example \"n-butyl acetate\": 0.92");
        }

        foreach ((string id, JsonElement value) in entries)
        {
            if (value.ValueKind == JsonValueKind.Number && value.GetDouble() is > 0 and <= 1)
            {
                solvents[id] = value.GetDouble();
            }
            else
            {
                _errors.Add($"solvents: \"{id}\" is {value.GetRawText()}; give a volume fraction above 0 and up to 1");
            }
        }

        return solvents;
    }

    private (string? Id, Substrate? Own) SubstrateOf(Dictionary<string, JsonElement> given)
    {
        if (!given.TryGetValue("substrate", out JsonElement body) || body.ValueKind == JsonValueKind.Null)
        {
            return (null, null);
        }

        if (body.ValueKind == JsonValueKind.String)
        {
            return (body.GetString(), null);
        }

        if (body.ValueKind != JsonValueKind.Object)
        {
            _errors.Add("substrate is neither an id such as \"glass\" nor an object with thicknessM, conductivityWPerMK and volumetricHeatCapacityJPerM3K");
            return (null, null);
        }

        Dictionary<string, JsonElement> entries = Entries(body, "substrate: ", SubstrateKeys);
        double? thickness = Number(entries, "substrate: ", "thicknessM", 0.0001, 0.2, "0.0001 to 0.2 m", required: true);
        double? conductivity = Number(entries, "substrate: ", "conductivityWPerMK", 0.01, 500, "0.01 to 500 W/(m K)", required: true);
        double? capacity = Number(entries, "substrate: ", "volumetricHeatCapacityJPerM3K", 1e4, 1e7, "10000 to 10000000 J/(m³ K)", required: true);
        return thickness is { } d && conductivity is { } k && capacity is { } c
            ? (null, new Substrate(Text(entries, "name") ?? "substrate of the mix file", d, k, c))
            : (null, null);
    }

    // The entries of an object; what is written twice or unknown becomes an error.
    private Dictionary<string, JsonElement> Entries(JsonElement parent, string at, string[]? known)
    {
        var entries = new Dictionary<string, JsonElement>();
        foreach (JsonProperty entry in parent.EnumerateObject())
        {
            if (known is not null && !known.Contains(entry.Name))
            {
                _errors.Add($"{at}\"{entry.Name}\" is not a key of a mix file; {NearestName.Hint(entry.Name, known)}");
            }
            else if (!entries.TryAdd(entry.Name, entry.Value))
            {
                _errors.Add($"{at}\"{entry.Name}\" is given twice; keep one of the two");
            }
        }

        return entries;
    }

    private double? Number(Dictionary<string, JsonElement> given, string at, string key, double least, double most, string wanted, bool required)
    {
        if (!given.TryGetValue(key, out JsonElement value) || (!required && value.ValueKind == JsonValueKind.Null))
        {
            if (required)
            {
                _errors.Add($"{at}{key} is missing; give {wanted}");
            }

            return null;
        }

        if (value.ValueKind == JsonValueKind.Number && value.GetDouble() is double number && number >= least && number <= most)
        {
            return number;
        }

        _errors.Add($"{at}{key} is {value.GetRawText()}; give {wanted}");
        return null;
    }

    private string? Text(Dictionary<string, JsonElement> given, string key)
    {
        if (!given.TryGetValue(key, out JsonElement value) || value.ValueKind is JsonValueKind.Null or JsonValueKind.String)
        {
            return value.ValueKind == JsonValueKind.String ? value.GetString() : null;
        }

        _errors.Add($"{key} is {value.GetRawText()}; give a text in quotes");
        return null;
    }

    private void Add(FormattableString error) => _errors.Add(FormattableString.Invariant(error));
}
