using BoothWatch.Service.Configuration;

namespace BoothWatch.Service.Tests.Configuration;

public sealed class ConfigurationFileTests : IDisposable
{
    private readonly string _path = Path.GetTempFileName();

    public void Dispose() => File.Delete(_path);

    [Fact]
    public void Read_JsonWithCommentsAndTrailingCommas_IsRead()
    {
        File.WriteAllText(_path, "// top\n{ \"booth\": { /* name */ \"name\": \"north\", }, }");

        ConfigurationFile file = ConfigurationFile.Read(_path);

        Assert.Empty(file.Errors);
        Assert.Equal("north", file.Configuration["booth:name"]);
        Assert.Equal(Path.GetFullPath(_path), file.Path);
    }

    [Fact]
    public void Read_BrokenJson_NamesFileAndLine()
    {
        File.WriteAllText(_path, "{\n \"booth\": {\n  \"name\" \"north\"\n } }");

        string error = Assert.Single(ConfigurationFile.Read(_path).Errors);

        Assert.StartsWith($"{Path.GetFullPath(_path)}, line 3: ", error, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_KeyTwice_IsAnError()
    {
        File.WriteAllText(_path, """{ "booth": { "name": "a", "name": "b" } }""");

        Assert.Equal($"{Path.GetFullPath(_path)}: booth:name is given twice; keep one of the two", Assert.Single(ConfigurationFile.Read(_path).Errors));
    }

    [Fact]
    public void Read_MissingFile_NamesTheArgument() =>
        Assert.StartsWith("--config is 'none.json': there is no such file", Assert.Single(ConfigurationFile.Read("none.json").Errors), StringComparison.Ordinal);

    [Fact]
    public void Read_Folder_SaysThatItIsOne() =>
        Assert.Contains("that is a folder; give the file in it", Assert.Single(ConfigurationFile.Read(Path.GetTempPath()).Errors), StringComparison.Ordinal);
}
