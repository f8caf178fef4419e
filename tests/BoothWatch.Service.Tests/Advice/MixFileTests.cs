using BoothWatch.Service.Advice;

namespace BoothWatch.Service.Tests.Advice;

public sealed class MixFileTests : IDisposable
{
    private readonly string _path = Path.GetTempFileName();

    public void Dispose() => File.Delete(_path);

    [Fact]
    public void Mix_OnANamedSubstrate_IsRead()
    {
        MixFile mix = Read("""{ "solvents": { "n-butyl acetate": 0.92 }, "polymerVolumeFraction": 0.08, "substrate": "glass" } // neat""");

        Assert.Equal(0.92, mix.Solvents["n-butyl acetate"]);
        Assert.Equal(0.08, mix.PolymerVolumeFraction);
        Assert.Equal("glass", mix.SubstrateId);
        Assert.Null(mix.OwnSubstrate);
        Assert.Equal(Path.GetFileName(_path), mix.Name);
    }

    [Fact]
    public void Mix_WithItsOwnSubstrate_IsRead()
    {
        MixFile mix = Read("""
            { "name": "test mix", "wetFilmUm": 100, "solvents": { "acetone": 0.5, "toluene": 0.4 }, "polymerVolumeFraction": 0.1,
              "substrate": { "thicknessM": 0.004, "conductivityWPerMK": 0.15, "volumetricHeatCapacityJPerM3K": 770000 } }
            """);

        Assert.Equal("test mix", mix.Name);
        Assert.Equal(100, mix.WetFilmUm);
        Assert.Null(mix.SubstrateId);
        Assert.Equal((0.004, 0.15, 770_000), (mix.OwnSubstrate!.ThicknessM, mix.OwnSubstrate.ConductivityWPerMK, mix.OwnSubstrate.VolumetricHeatCapacityJPerM3K));
    }

    [Theory]
    [InlineData("""{ "solvents": { "acetone": 0.8 }, "polymerVolumeFraction": 0.1 }""", "sum to 0.9; they must sum to 1 within 0.001")]
    [InlineData("""{ "solvents": { "acetone": 0.8985 }, "polymerVolumeFraction": 0.1 }""", "sum to 0.9985")]
    [InlineData("""{ "solvents": { "acetone": -0.1, "toluene": 1 }, "polymerVolumeFraction": 0.1 }""", "\"acetone\" is -0.1")]
    [InlineData("""{ "solvents": { }, "polymerVolumeFraction": 0.1 }""", "solvents is empty")]
    [InlineData("""{ "solvents": { "acetone": 1 }, "polymerVolumeFraction": 0 }""", "polymerVolumeFraction is 0;")]
    [InlineData("""{ "solvents": { "acetone": 0.4 }, "polymerVolumeFraction": 0.6 }""", "polymerVolumeFraction is 0.6;")]
    [InlineData("""{ "polymerVolumeFraction": 0.6 }""", "solvents")]
    [InlineData("""{ "solvents": { "acetone": 0.9 } }""", "polymerVolumeFraction")]
    [InlineData("""{ "solvents": { "acetone": 0.9 }, "polymerVolumeFraction": 0.1, "polymer": 3 }""", "\"polymer\" is not a key of a mix file; known: name, polymerVolumeFraction, solvents, substrate, wetFilmUm")]
    [InlineData("""{ "solvents": { "acetone": 0.9 }, "polymerVolumeFraction": 0.1, "wetfilm": 75 }""", "\"wetfilm\" is not a key of a mix file; did you mean wetFilmUm?")]
    [InlineData("""{ "solvents": { "acetone": "much" }, "polymerVolumeFraction": 0.1 }""", "\"acetone\" is \"much\"; give a volume fraction")]
    [InlineData("""{ "solvents": { "acetone": 0.9 }, "polymerVolumeFraction": 0.1, "substrate": { "thickness": 0.004 } }""", "substrate: \"thickness\" is not a key of a mix file; did you mean thicknessM?")]
    [InlineData("""{ "solvents": { "acetone": 0.45, "acetone": 0.45 }, "polymerVolumeFraction": 0.1 }""", "\"acetone\" is given twice; keep one of the two")]
    [InlineData("""{ "solvents": { "acetone": 0.9 }, "polymerVolumeFraction": 0.1, "substrate": 3 }""", "substrate")]
    [InlineData("""{ "solvents": { "acetone": 0.9 }, "polymerVolumeFraction": 0.1, "substrate": { "thicknessM": 0.004 } }""", "conductivityWPerMK")]
    [InlineData("""{ "solvents": { "acetone": 0.9 }, "polymerVolumeFraction": 0.1, "substrate": { "thicknessM": 4, "conductivityWPerMK": 0.15, "volumetricHeatCapacityJPerM3K": 770000 } }""", "thicknessM is 4")]
    [InlineData("""{ "solvents": { "acetone": 0.9 }, "polymerVolumeFraction": 0.1, "wetFilmUm": 5 }""", "wetFilmUm is 5")]
    [InlineData("{ \"solvents\":\n [", "line 2")]
    [InlineData("null", "empty")]
    public void WrongMix_SaysWhatIsWrong(string text, string says)
    {
        File.WriteAllText(_path, text);

        Assert.Null(MixFileReader.Read(_path, out IReadOnlyList<string> errors));

        Assert.Contains(errors, error => error.Contains(says, StringComparison.Ordinal));
        Assert.DoesNotContain(errors, error => error.Contains(".NET", StringComparison.Ordinal) || error.Contains(nameof(MixFile), StringComparison.Ordinal));
    }

    [Fact]
    public void MixWithSeveralErrors_NamesThemAllAtOnce()
    {
        File.WriteAllText(_path, """{ "solvent": { "acetone": 0.9 }, "polymerVolumeFraction": 2, "wetfilm": 75, "name": 3 }""");

        MixFileReader.Read(_path, out IReadOnlyList<string> errors);

        Assert.Collection(
            errors,
            error => Assert.Equal("\"solvent\" is not a key of a mix file; did you mean solvents?", error),
            error => Assert.StartsWith("\"wetfilm\" is not a key", error, StringComparison.Ordinal),
            error => Assert.StartsWith("solvents is missing", error, StringComparison.Ordinal),
            error => Assert.StartsWith("polymerVolumeFraction is 2; ", error, StringComparison.Ordinal),
            error => Assert.StartsWith("name is 3; ", error, StringComparison.Ordinal));
    }

    [Fact]
    public void MissingFileOrFolder_SaysWhatToGive()
    {
        MixFileReader.Read("no-such-mix.json", out IReadOnlyList<string> missing);
        MixFileReader.Read(Path.GetTempPath(), out IReadOnlyList<string> folder);

        Assert.StartsWith("there is no such file; give ", Assert.Single(missing), StringComparison.Ordinal);
        Assert.StartsWith("that is a folder; give ", Assert.Single(folder), StringComparison.Ordinal);
    }

    private MixFile Read(string text)
    {
        File.WriteAllText(_path, text);
        MixFile? mix = MixFileReader.Read(_path, out IReadOnlyList<string> errors);
        Assert.Empty(errors);
        return mix!;
    }
}
