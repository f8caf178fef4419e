using System.Text;
using BoothWatch.Service.Setup;
using FsCheck.Xunit;
using Microsoft.Extensions.Configuration;

namespace BoothWatch.Service.Tests.Setup;

/// <summary>The oracle is the reader that the program starts with: Microsoft.Extensions.Configuration.Json.</summary>
public class JsonTextEditTests
{
    [Theory]
    [InlineData("{ \"booth\": { \"name\": \"corner\" } }", "booth:name", "\"north\"", "{ \"booth\": { \"name\": \"north\" } }")]
    [InlineData("{ \"Booth\": { \"NAME\": \"corner\", } }", "booth:name", "\"north\"", "{ \"Booth\": { \"NAME\": \"north\", } }")]
    [InlineData("{ \"coat\": { \"cupMl\": 250 /* mL */ } } // end", "coat:cupMl", "400", "{ \"coat\": { \"cupMl\": 400 /* mL */ } } // end")]
    [InlineData("{ \"coat\": { \"lacquer\": null } }", "coat:lacquer", "\"clear\"", "{ \"coat\": { \"lacquer\": \"clear\" } }")]
    [InlineData("{}", "booth:name", "\"north\"", "{ \"booth\": { \"name\": \"north\" } }")]
    [InlineData("{ \"booth\": {} }", "booth:name", "\"north\"", "{ \"booth\": { \"name\": \"north\" } }")]
    [InlineData("{ \"booth\": null }", "booth:name", "\"north\"", "{ \"booth\": { \"name\": \"north\" } }")]
    [InlineData("{\"booth\":{\"shop\":\"a\"}}", "booth:name", "\"north\"", "{\"booth\":{\"shop\":\"a\", \"name\": \"north\"}}")]
    [InlineData("{\n  \"booth\": {\n    // the shop\n    \"shop\": \"a\" // one\n    // none yet\n  }\n}", "booth:name", "\"north\"",
        "{\n  \"booth\": {\n    // the shop\n    \"shop\": \"a\", // one\n    // none yet\n    \"name\": \"north\"\n  }\n}")]
    [InlineData("{\r\n\t\"booth\": {\r\n\t\t\"shop\": \"a\", /* , */\r\n\t}\r\n}", "booth:name", "\"north\"",
        "{\r\n\t\"booth\": {\r\n\t\t\"shop\": \"a\", /* , */\r\n\t\t\"name\": \"north\"\r\n\t}\r\n}")]
    [InlineData("{\n  \"booth\": {\n  }\n}", "booth:name", "\"north\"", "{\n  \"booth\": {\n    \"name\": \"north\"\n  }\n}")]
    public void Set_OfOneValue_LeavesEverythingElse(string text, string path, string token, string expected) => Assert.Equal(expected, Edit(text, path, token));

    [Theory]
    [InlineData("", "not valid JSON")]
    [InlineData("[1]", "holds no settings")]
    [InlineData("{ \"booth\": { \"name\": \"a\" ", "not valid JSON")]
    [InlineData("{ \"booth\": { \"name\": \"a\" } } more", "not valid JSON")]
    [InlineData("{ \"booth\": \"a\" }", "booth is a value")]
    [InlineData("{ \"booth\": { \"name\": [\"a\"] } }", "booth:name holds settings or a list")]
    [InlineData("{ \"booth\": [\"a\"] }", "booth holds settings or a list")]
    [InlineData("{ \"booth\": { \"name\": \"a\", \"Name\": \"b\" } }", "booth:name is given twice")]
    [InlineData("{ \"booth\": { \"name\": \"a\" }, \"booth\": {} }", "booth is given twice")]
    public void Set_OfATextThatIsNotWhatItShouldBe_IsRefused(string text, string why) =>
        Assert.Contains(why, Assert.Throws<InvalidDataException>(() => Edit(text, "booth:name", "\"north\"")).Message, StringComparison.Ordinal);

    [Fact]
    public void Set_InTheShippedFile_ChangesOneLine()
    {
        string text = RepositoryFile.Read("config/boothwatch.json");
        string[] before = text.Split('\n');
        string[] after = Edit(text, "coat:retarderHighestPct", "12.5").Split('\n');
        Assert.Equal(before.Length, after.Length);
        (string was, string @is) = Assert.Single(before.Zip(after), pair => pair.First != pair.Second);
        Assert.Equal(("    \"retarderHighestPct\": null,", "    \"retarderHighestPct\": 12.5,"), (was, @is));
    }

    [Property(MaxTest = 500)]
    public void Set_OfAnyValueThatIsThere_ReplacesItsBytesAlone(int seed)
    {
        Random random = new(seed);
        CommentedJson json = CommentedJson.Make(random);
        if (json.Values.Count == 0)
        {
            return;
        }

        (string path, (int start, int end)) = json.Values.ElementAt(random.Next(json.Values.Count));
        (string token, string? value) = Tokens[random.Next(Tokens.Length)];
        string edited = Edit(json.Text, path, token);
        Assert.Equal(json.Text[..start] + token + json.Text[end..], edited);
        AssertOneChange(json.Text, edited, path, value);
    }

    [Property(MaxTest = 500)]
    public void Set_OfAnyValueThatIsNotThere_AddsItAndKeepsEveryByteInOrder(int seed)
    {
        Random random = new(seed);
        CommentedJson json = CommentedJson.Make(random);
        string section = json.Sections[random.Next(json.Sections.Count)];
        string path = (section.Length > 0 ? section + ":" : "") + (random.Next(4) == 0 ? "fresh:inner" : "fresh");
        (string token, string? value) = Tokens[random.Next(Tokens.Length)];
        string edited = Edit(json.Text, path, token);
        Assert.True(edited.Contains(token, StringComparison.Ordinal) && IsSubsequence(json.Text, edited), edited);
        AssertOneChange(json.Text, edited, path, value);
    }

    private static readonly (string Token, string? Value)[] Tokens =
        [("\"north, // {\\\"x\\\"}\"", "north, // {\"x\"}"), ("\"Möbel \\u00e9\"", "Möbel é"), ("-12.5", "-12.5"), ("0", "0"), ("null", null)];

    private static void AssertOneChange(string before, string after, string path, string? value)
    {
        Dictionary<string, string> expected = Read(before);
        expected.Remove(path);
        if (value is not null)
        {
            expected[path] = value;
        }

        Assert.Equal(expected.OrderBy(pair => pair.Key, StringComparer.Ordinal), Read(after).OrderBy(pair => pair.Key, StringComparer.Ordinal), new PairComparer());
    }

    private static Dictionary<string, string> Read(string text)
    {
        using MemoryStream stream = new(Encoding.UTF8.GetBytes(text));
        return new ConfigurationBuilder().AddJsonStream(stream).Build().AsEnumerable()
            .Where(pair => !string.IsNullOrEmpty(pair.Value)) // an empty list reads as ""
            .ToDictionary(pair => pair.Key, pair => pair.Value!, StringComparer.OrdinalIgnoreCase);
    }

    private static bool IsSubsequence(string part, string whole)
    {
        int at = 0;
        foreach (char letter in whole)
        {
            at += at < part.Length && part[at] == letter ? 1 : 0;
        }

        return at == part.Length;
    }

    private static string Edit(string text, string path, string token) => Encoding.UTF8.GetString(JsonTextEdit.Set(Encoding.UTF8.GetBytes(text), path, token));

    private sealed class PairComparer : IEqualityComparer<KeyValuePair<string, string>>
    {
        public bool Equals(KeyValuePair<string, string> x, KeyValuePair<string, string> y) =>
            string.Equals(x.Key, y.Key, StringComparison.OrdinalIgnoreCase) && x.Value == y.Value;

        public int GetHashCode(KeyValuePair<string, string> obj) => obj.Key.Length;
    }
}
