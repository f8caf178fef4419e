using System.Text.Json;
using BoothWatch.Film;
using BoothWatch.Solvents;

namespace BoothWatch.Service.Materials;

/// <summary>Reads config/materials: solvents, lacquers, thinners, retarders, substrates. Finds all errors before it throws.</summary>
public sealed class MaterialsLoader
{
    private static readonly JsonDocumentOptions Lenient = new() { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true };

    private readonly string _folder;
    private readonly List<string> _errors = [];
    private readonly Dictionary<string, Solvent> _solvents = new(StringComparer.OrdinalIgnoreCase);

    private MaterialsLoader(string folder) => _folder = folder;

    /// <summary>Reads the folder.</summary>
    /// <param name="folder">The folder with solvents.json, lacquers.json, thinners.json, retarders.json and substrates.json.</param>
    /// <exception cref="MaterialsException">Anything is missing or wrong; lists every error with file, key, value and fix.</exception>
    public static MaterialCatalogue Load(string folder) => new MaterialsLoader(folder).Load();

    private MaterialCatalogue Load()
    {
        foreach ((MaterialNode node, string id) in Entries("solvents"))
        {
            Solvent solvent = SolventReader.Read(node, id);
            foreach (string name in node.Texts("alsoKnownAs").Prepend(id))
            {
                if (!_solvents.TryAdd(name, solvent))
                {
                    node.Fail("id", $"or alsoKnownAs repeats the name {name}; give each solvent names of its own");
                }
            }

            node.RejectUnknownKeys();
        }

        MaterialCatalogue catalogue = new()
        {
            Solvents = _solvents,
            Lacquers = Read("lacquers", (node, id) => new Lacquer(
                id, node.Text("description"), ReadMix(node, node.Number("polymerVolumeFraction", 0, 0.9, "(share of the volume)", 0.14)))),
            Thinners = Read("thinners", (node, id) => new Thinner(id, node.Text("description"), ReadMix(node, 0))),
            Retarders = Read("retarders", (node, id) => new Retarder(
                id, node.Text("description"), ReadMix(node, 0), node.Number("highestLevelPct", 0, LadderBuilder.HighestLevelPct, "%", 15))),
            Substrates = Read("substrates", (node, id) =>
            {
                _ = node.Text("description");
                return new Substrate(
                    id,
                    node.Number("thicknessMm", 0.1, 1000, "mm", 4) / 1000,
                    node.Number("conductivityWPerMK", 0.01, 500, "W/(m K)", 0.15),
                    node.Number("volumetricHeatCapacityMJPerM3K", 0.01, 10, "MJ/(m³ K)", 0.77) * 1e6);
            }),
        };

        return _errors.Count == 0 ? catalogue : throw new MaterialsException(_errors);
    }

    private Dictionary<string, T> Read<T>(string kind, Func<MaterialNode, string, T> read)
    {
        Dictionary<string, T> found = new(StringComparer.OrdinalIgnoreCase);
        foreach ((MaterialNode node, string id) in Entries(kind))
        {
            T item = read(node, id);
            _ = node.Text("source");
            node.RejectUnknownKeys();
            if (!found.TryAdd(id, item))
            {
                node.Fail("id", $"repeats {id}; give each entry an id of its own");
            }
        }

        return found;
    }

    private Mix ReadMix(MaterialNode node, double polymer)
    {
        List<(Solvent Solvent, double VolumeFraction)> parts = [];
        int before = _errors.Count;
        if (node.Inner("solvents") is { } shares)
        {
            foreach (string name in shares.Keys())
            {
                double share = shares.Number(name, 0, 1, "(share of the volume)", 0.25);
                if (_solvents.TryGetValue(name, out Solvent? solvent))
                {
                    parts.Add((solvent, share));
                }
                else
                {
                    shares.Fail(name, $"is no known solvent; add it to solvents.json or use one of {string.Join(", ", Known())}");
                }
            }
        }

        if (_errors.Count == before)
        {
            try
            {
                return new Mix(parts, polymer);
            }
            catch (ArgumentException error)
            {
                node.Fail("solvents", $"cannot be used: {error.Message}");
            }
        }

        return new Mix([], 1);
    }

    private IEnumerable<string> Known() => _solvents.Values.Select(solvent => solvent.Id).Distinct().Order();

    private IEnumerable<(MaterialNode Node, string Id)> Entries(string kind)
    {
        string file = $"{kind}.json";
        JsonElement list;
        try
        {
            using JsonDocument document = JsonDocument.Parse(File.ReadAllText(Path.Combine(_folder, file)), Lenient);
            if (document.RootElement.ValueKind != JsonValueKind.Object
                || !document.RootElement.TryGetProperty(kind, out list)
                || list.ValueKind != JsonValueKind.Array)
            {
                _errors.Add($"{file}: {kind} is missing; give an object with a list {kind}");
                yield break;
            }

            list = list.Clone();
        }
        catch (JsonException error)
        {
            _errors.Add($"{file}: not valid JSON at line {error.LineNumber + 1}: {error.Message}; correct the syntax");
            yield break;
        }
        catch (IOException error)
        {
            _errors.Add($"{file}: cannot be read from {_folder}: {error.Message}; put the file there or name another folder");
            yield break;
        }

        int index = 0;
        foreach (JsonElement element in list.EnumerateArray())
        {
            MaterialNode node = new(element, $"{file}: {kind}[{index}]", _errors);
            index++;
            string id = node.Text("id");
            yield return (id.Length > 0 ? node.Renamed($"{file}: {id}") : node, id);
        }
    }
}
