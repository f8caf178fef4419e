using System.Globalization;
using System.Text;
using System.Text.Json;
using BoothWatch.Service.Records;
using FsCheck;
using FsCheck.Xunit;

namespace BoothWatch.Service.Tests.Records;

/// <summary>The canonical form against the tables of RFC 8785.</summary>
public sealed class CanonicalJsonTests
{
    // RFC 8785, Appendix B: bits of the number after IEEE 754, and how it is written.
    [Theory]
    [InlineData("0000000000000000", "0")]
    [InlineData("8000000000000000", "0")]
    [InlineData("0000000000000001", "5e-324")]
    [InlineData("8000000000000001", "-5e-324")]
    [InlineData("7fefffffffffffff", "1.7976931348623157e+308")]
    [InlineData("ffefffffffffffff", "-1.7976931348623157e+308")]
    [InlineData("4340000000000000", "9007199254740992")]
    [InlineData("c340000000000000", "-9007199254740992")]
    [InlineData("4430000000000000", "295147905179352830000")]
    [InlineData("44b52d02c7e14af5", "9.999999999999997e+22")]
    [InlineData("44b52d02c7e14af6", "1e+23")]
    [InlineData("44b52d02c7e14af7", "1.0000000000000001e+23")]
    [InlineData("444b1ae4d6e2ef4e", "999999999999999700000")]
    [InlineData("444b1ae4d6e2ef4f", "999999999999999900000")]
    [InlineData("444b1ae4d6e2ef50", "1e+21")]
    [InlineData("3eb0c6f7a0b5ed8c", "9.999999999999997e-7")]
    [InlineData("3eb0c6f7a0b5ed8d", "0.000001")]
    [InlineData("41b3de4355555553", "333333333.3333332")]
    [InlineData("41b3de4355555554", "333333333.33333325")]
    [InlineData("41b3de4355555555", "333333333.3333333")]
    [InlineData("41b3de4355555556", "333333333.3333334")]
    [InlineData("41b3de4355555557", "333333333.33333343")]
    [InlineData("becbf647612f3696", "-0.0000033333333333333333")]
    [InlineData("43143ff3c1cb0959", "1424953923781206.2")]
    public void Number_OfTheRfc_IsWrittenAsThere(string bits, string written) =>
        Assert.Equal(written, CanonicalJson.Number(BitConverter.UInt64BitsToDouble(ulong.Parse(bits, NumberStyles.HexNumber, CultureInfo.InvariantCulture))));

    [Fact]
    public void Value_OfTheRfc_IsWrittenAsThere()
    {
        // RFC 8785, 3.2.2 and 3.2.3: the example and its canonical form.
        const string example = """
            {
              "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
              "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
              "literals": [null, true, false]
            }
            """;
        const string canonical = """{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}""";
        Assert.Equal(canonical, Of(example));
    }

    [Fact]
    public void Members_AreInTheOrderOfTheRfc()
    {
        // RFC 8785, 3.2.3: by UTF-16 code units, so that the smiling face comes before the Hebrew letter.
        const string example = """{"\u20ac":"Euro Sign","\r":"Carriage Return","\ufb33":"Hebrew Letter Dalet With Dagesh","1":"One","\ud83d\ude00":"Emoji: Grinning Face","\u0080":"Control","\u00f6":"Latin Small Letter O With Diaeresis"}""";
        using JsonDocument json = JsonDocument.Parse(Of(example));
        Assert.Equal(
            ["Carriage Return", "One", "Control", "Latin Small Letter O With Diaeresis", "Euro Sign", "Emoji: Grinning Face", "Hebrew Letter Dalet With Dagesh"],
            json.RootElement.EnumerateObject().Select(member => member.Value.GetString()!));
    }

    [Property]
    public bool Number_ReadBack_IsTheSame(NormalFloat value) =>
        double.Parse(CanonicalJson.Number(value.Get), CultureInfo.InvariantCulture) == value.Get;

    [Theory]
    [InlineData("1e999")]
    [InlineData("\"\\ud800\"")]
    public void Value_ThatIsNotIJson_IsRefused(string json) => Assert.Throws<FormatException>(() => Of(json));

    private static string Of(string json)
    {
        using JsonDocument document = JsonDocument.Parse(json);
        return Encoding.UTF8.GetString(CanonicalJson.Bytes(document.RootElement));
    }
}
