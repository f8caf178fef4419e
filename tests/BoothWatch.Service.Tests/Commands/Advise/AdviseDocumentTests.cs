using BoothWatch.Service.Advice;

namespace BoothWatch.Service.Tests.Commands.Advise;

public class AdviseDocumentTests
{
    [Fact]
    public void Document_NamesEveryArgument()
    {
        string document = RepositoryFile.Read("docs/advise.md");

        Assert.All(AdviseArguments.All, argument => Assert.Contains($"| `--{argument.Name}` |", document, StringComparison.Ordinal));
    }

    [Fact]
    public void MixOfTheDocument_IsRead()
    {
        string document = RepositoryFile.Read("docs/advise.md");
        int start = document.IndexOf("```json", StringComparison.Ordinal) + "```json".Length;
        string path = Path.GetTempFileName();
        try
        {
            File.WriteAllText(path, document[start..document.IndexOf("```", start, StringComparison.Ordinal)]);
            Assert.Equal("glass", MixFileReader.Read(path, out _)?.SubstrateId);
        }
        finally
        {
            File.Delete(path);
        }
    }
}
