using System.Text.Json;
using BoothWatch.Service.Sensors.MqttAir;

namespace BoothWatch.Service.Tests.Sensors.MqttAir;

public class JsonPointerTests
{
    // RFC 6901, section 5: the document, and what each pointer evaluates to.
    private const string Document =
        """{"foo":["bar","baz"],"":0,"a/b":1,"c%d":2,"e^f":3,"g|h":4,"i\\j":5,"k\"l":6," ":7,"m~n":8}""";

    [Theory]
    [InlineData("", Document)]
    [InlineData("/foo", """["bar","baz"]""")]
    [InlineData("/foo/0", "\"bar\"")]
    [InlineData("/", "0")]
    [InlineData("/a~1b", "1")]
    [InlineData("/c%d", "2")]
    [InlineData("/e^f", "3")]
    [InlineData("/g|h", "4")]
    [InlineData("/i\\j", "5")]
    [InlineData("/k\"l", "6")]
    [InlineData("/ ", "7")]
    [InlineData("/m~0n", "8")]
    public void Pointer_OfTheStandardsExamples_FindsWhatTheStandardSays(string path, string expected)
    {
        using JsonDocument document = JsonDocument.Parse(Document);

        Assert.True(JsonPointer.IsValid(path));
        Assert.Equal(expected, JsonPointer.Find(document.RootElement, path)?.GetRawText());
    }

    // RFC 6901, sections 3 and 4: "~" only as "~0" or "~1"; "~01" is "~1"; array index without leading zeros; "-" is past the end.
    [Theory]
    [InlineData("foo", false)]
    [InlineData("/m~n", false)]
    [InlineData("/m~", false)]
    [InlineData("/~01", true)]
    public void Pointer_Syntax_IsThatOfTheStandard(string path, bool valid) => Assert.Equal(valid, JsonPointer.IsValid(path));

    [Theory]
    [InlineData("/foo/2")]
    [InlineData("/foo/00")]
    [InlineData("/foo/-")]
    [InlineData("/foo/99999999999999999999")]
    [InlineData("/foo/0/x")]
    [InlineData("/nothing")]
    public void Pointer_ToNothing_FindsNothing(string path)
    {
        using JsonDocument document = JsonDocument.Parse(Document);

        Assert.Null(JsonPointer.Find(document.RootElement, path));
    }

    [Fact]
    public void Pointer_EscapedTilde_IsUnescapedOnce()
    {
        using JsonDocument document = JsonDocument.Parse("""{"~1":9,"/":1}""");

        Assert.Equal("9", JsonPointer.Find(document.RootElement, "/~01")?.GetRawText());
    }
}
