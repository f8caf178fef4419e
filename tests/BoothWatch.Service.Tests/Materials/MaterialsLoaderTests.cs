using BoothWatch.Service.Materials;
using BoothWatch.Solvents;

namespace BoothWatch.Service.Tests.Materials;

public sealed class MaterialsLoaderTests : IDisposable
{
    private static readonly string Shipped = Path.Combine(AppContext.BaseDirectory, "config", "materials");
    private readonly string _folder = Directory.CreateTempSubdirectory("materials").FullName;

    public MaterialsLoaderTests()
    {
        foreach (string file in Directory.GetFiles(Shipped))
        {
            File.Copy(file, Path.Combine(_folder, Path.GetFileName(file)));
        }
    }

    public void Dispose() => Directory.Delete(_folder, true);

    [Fact]
    public void Load_ShippedMaterials_ReadsThemAll()
    {
        MaterialCatalogue catalogue = MaterialsLoader.Load(Shipped);
        Assert.True(catalogue.Solvents.Values.Distinct().Count() >= 35);
        Assert.Same(catalogue.Solvents["2-butoxyethanol"], catalogue.Solvents["EB"]);
        Assert.Same(catalogue.Solvents["n-butyl acetate"], catalogue.Solvents["N-Butyl Acetate"]);
        Assert.Equal(0.14, catalogue.Lacquers["nitrocellulose lacquer"].Mix.PolymerVolumeFraction);
        Assert.Contains("fast thinner", catalogue.Thinners.Keys);
        Assert.Contains("2-butoxyethanol", catalogue.Retarders.Keys);
        Assert.Equal(0.004, catalogue.Substrates["wood"].ThicknessM, 12);
    }

    [Fact]
    public void Load_ShippedSolvents_NameASourceForEachGroupOfFigures()
    {
        string[] groups = ["vapourPressure", "criticalTemperatureK", "heatOfVaporisation", "liquidDensity", "liquidHeatCapacity", "diffusivity"];
        Assert.All(MaterialsLoader.Load(Shipped).Solvents.Values, solvent => Assert.All(groups, group => Assert.NotEmpty(solvent.Sources[group])));
    }

    [Fact]
    public void Load_SeveralMistakesInSeveralFiles_ReportsAllWithFileKeyValueAndFix()
    {
        Change("lacquers.json", "\"polymerVolumeFraction\": 0.14", "\"polymerVolumeFraction\": 14");
        Change("thinners.json", "\"acetone\": 0.30", "\"acetona\": 0.30");
        Change("retarders.json", "\"highestLevelPct\": 10", "\"highestLevel\": 10");
        Change("substrates.json", "\"thicknessMm\": 45", "\"thicknessMm\": \"45\"");
        Change("solvents.json", "\"molarMassGPerMol\": 58.08", "\"molarMassGPerMol\": 0.05808");
        IReadOnlyList<string> errors = Assert.Throws<MaterialsException>(() => MaterialsLoader.Load(_folder)).Errors;
        Assert.Contains(errors, error => error.StartsWith("lacquers.json: nitrocellulose lacquer.polymerVolumeFraction is 14; give a number from 0 to 0.9", StringComparison.Ordinal));
        Assert.Contains(errors, error => error.StartsWith("thinners.json: fast thinner.solvents.acetona is no known solvent; add it to solvents.json or use one of 1-methoxy", StringComparison.Ordinal));
        Assert.Contains(errors, error => error.StartsWith("retarders.json: 2-butoxyethyl acetate.highestLevelPct is missing; give", StringComparison.Ordinal));
        Assert.Contains(errors, error => error.StartsWith("retarders.json: 2-butoxyethyl acetate.highestLevel is not a known key", StringComparison.Ordinal));
        Assert.Contains(errors, error => error.StartsWith("substrates.json: thick wood.thicknessMm is \"45\"; give a number", StringComparison.Ordinal));
        Assert.Contains(errors, error => error.StartsWith("solvents.json: acetone.molarMassGPerMol is 0.05808; give a number from 10 to 500 g/mol", StringComparison.Ordinal));
        Assert.Equal(6, errors.Count);
    }

    [Theory]
    [InlineData("thinners.json", "\"acetone\": 0.30", "\"acetone\": 0.20", "fast thinner.solvents cannot be used: volume fractions of polymer and solvents sum to 0.9")]
    [InlineData("thinners.json", "\"acetone\": 0.30", "\"acetone\": -0.30", "fast thinner.solvents.acetone is -0.30; give a number from 0 to 1")]
    [InlineData("solvents.json", "\"form\": \"antoineLn\"", "\"form\": \"antoine10\"", "is antoine10; give dippr101 or antoineLn")]
    [InlineData("solvents.json", "[72.77713, -5752.936, -7.680083, 6.83076e-06, 2.0]", "[7.0935, 1197.01, 228.06]", "give a list of 5 numbers")]
    [InlineData("solvents.json", "[72.77713, -5752.936, -7.680083, 6.83076e-06, 2.0]", "[7.0935, 1197.01, 228.06, 0, 2]", "at 25 °C; a lacquer solvent has 0.1 to 200000 Pa")]
    [InlineData("lacquers.json", "{", "{,", "not valid JSON at line")]
    [InlineData("substrates.json", "\"id\": \"glass\"", "\"id\": \"wood\"", "repeats wood")]
    public void Load_OneMistake_SaysWhereAndWhat(string file, string from, string to, string expected)
    {
        Change(file, from, to);
        Assert.Contains(expected, Assert.Throws<MaterialsException>(() => MaterialsLoader.Load(_folder)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Load_MissingFile_NamesIt()
    {
        File.Delete(Path.Combine(_folder, "retarders.json"));
        Assert.Contains("retarders.json: cannot be read", Assert.Throws<MaterialsException>(() => MaterialsLoader.Load(_folder)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Load_MissingFolder_NamesIt() =>
        Assert.Contains("nowhere", Assert.Throws<MaterialsException>(() => MaterialsLoader.Load(Path.Combine(_folder, "nowhere"))).Message, StringComparison.Ordinal);

    [Fact]
    public void Ladder_FromLoadedMaterials_StaysWithinFractions()
    {
        MaterialCatalogue catalogue = MaterialsLoader.Load(Shipped);
        foreach (Lacquer lacquer in catalogue.Lacquers.Values)
        {
            foreach (Thinner thinner in catalogue.Thinners.Values)
            {
                Mix thinned = LadderBuilder.Thin(lacquer, 1, thinner, 4);
                Assert.Equal(lacquer.Mix.PolymerVolumeFraction / 5, thinned.PolymerVolumeFraction, 12);
            }
        }
    }

    private void Change(string file, string from, string to)
    {
        string path = Path.Combine(_folder, file);
        string text = File.ReadAllText(path);
        int at = text.IndexOf(from, StringComparison.Ordinal);
        Assert.True(at >= 0, $"{file} holds no {from}");
        File.WriteAllText(path, text[..at] + to + text[(at + from.Length)..]);
    }
}
