using BoothWatch.Service.Outputs.Influx;

namespace BoothWatch.Service.Tests.Outputs.Influx;

/// <summary>Against the line protocol, https://docs.influxdata.com/influxdb/v2/reference/syntax/line-protocol/</summary>
public sealed class PointsTests
{
    private static readonly DateTimeOffset Time = DateTimeOffset.FromUnixTimeMilliseconds(1_788_768_000_123);

    [Fact]
    public void Line_OfARow_IsLineProtocolInMilliseconds()
    {
        string line = new Points(new BoothTags("Harbour Lane", "corner", IsDemo: false)).Line(
            "booth_reading",
            new FeedRow(42, Time, [new("verdict", 2L), new("dew_point_c", -3.25), new("quality", "GG--GG--")]));

        // "Special characters": a space in a tag value is escaped; integers end in i; text is quoted.
        Assert.Equal(
            "booth_reading,booth=corner,origin=measured,shop=Harbour\\ Lane dew_point_c=-3.25,quality=\"GG--GG--\",row_id=42i,verdict=2i 1788768000123",
            line);
    }

    [Fact]
    public void Line_WithNamesThatHoldEverySpecialCharacter_EscapesThem()
    {
        string line = new Points(new BoothTags("A, B=C", "x y", IsDemo: true)).Line(
            "booth_verdict_change", new FeedRow(1, Time, [new("reasons", "[{\"rule\":\"a\\\\b\"}]")]));

        // "Special characters": comma, equals sign and space in tag values; quote and backslash in text.
        Assert.Equal(
            "booth_verdict_change,booth=x\\ y,origin=demo,shop=A\\,\\ B\\=C reasons=\"[{\\\"rule\\\":\\\"a\\\\\\\\b\\\"}]\",row_id=1i 1788768000123",
            line);
    }

    [Fact]
    public void Line_WithANameThatEndsInABackslash_StaysWhole()
    {
        // "Special characters": a backslash before a comma or space would escape it, and there is no way to write one there.
        string line = new Points(new BoothTags("Harbour\\", "corner", IsDemo: false)).Line("m", new FeedRow(1, Time, []));

        Assert.Equal("m,booth=corner,origin=measured,shop=Harbour/ row_id=1i 1788768000123", line);
    }

    [Fact]
    public void Line_OfTheSameRow_IsAlwaysTheSame()
    {
        var row = new FeedRow(7, Time, [new("booth_temperature_c", 21.123456789012345)]);

        Assert.Equal(new Points(ShippingBench.Tags).Line("m", row), new Points(ShippingBench.Tags).Line("m", row));
        Assert.Contains("booth_temperature_c=21.123456789012344", new Points(ShippingBench.Tags).Line("m", row), StringComparison.Ordinal);
    }
}
