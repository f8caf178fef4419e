using System.Security.Cryptography;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using BoothWatch.Readings;
using BoothWatch.Service.Outputs.Mqtt.Homie;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Tests.Outputs.Mqtt;

/// <summary>Expected values: The Homie Convention 5.0, https://homieiot.github.io.</summary>
public partial class HomieDescriptionTests
{
    // The Homie Convention 5.0, table of property fields.
    private static readonly string[] Datatypes = ["integer", "float", "boolean", "string", "enum", "color", "datetime", "duration", "json"];

    private static JsonNode Description => JsonNode.Parse(HomieDescription.Of("Harbour Lane", "corner"))!;

    [Fact]
    public void Description_Device_HasTheRequiredFields()
    {
        Assert.Equal("5.0", (string?)Description["homie"]);
        Assert.True((long)Description["version"]! >= 1);
        Assert.Equal("Harbour Lane, corner booth", (string?)Description["name"]);
    }

    [Fact]
    public void Description_Nodes_AreTheWholeBooth() =>
        Assert.Equal(["verdict", "air", "film", "piece", "exhaust", "intake"], Description["nodes"]!.AsObject().Select(node => node.Key));

    [Fact]
    public void Description_EveryProperty_IsAsTheConventionWants()
    {
        foreach ((string nodeId, JsonNode? node) in Description["nodes"]!.AsObject())
        {
            Assert.Matches(TopicId(), nodeId);
            foreach ((string id, JsonNode? property) in node!["properties"]!.AsObject())
            {
                Assert.Matches(TopicId(), id);
                string datatype = (string)property!["datatype"]!;
                Assert.Contains(datatype, Datatypes);
                Assert.True(datatype != "enum" || ((string?)property["format"])?.Length > 0, $"{id}: an enum needs a format");
                Assert.Null(property["settable"]);
            }
        }
    }

    [Fact]
    public void Description_OfTheSameVersion_IsTheSame()
    {
        // "Whenever the document changes, a new higher version must be assigned": when this fails, raise
        // HomieDescription.Version, and put the new fingerprint here.
        string fingerprint = Convert.ToHexStringLower(SHA256.HashData(HomieDescription.Of("s", "b")))[..16];

        Assert.Equal((2, "3f4fe303771ba92e"), (HomieDescription.Version, fingerprint));
    }

    [Theory]
    [InlineData(21.5, "21.5")]
    [InlineData(-0.0001, "0")]
    [InlineData(1e21, "1000000000000000000000")]
    [InlineData(double.NaN, null)]
    [InlineData(double.PositiveInfinity, null)]
    public void Float_IsWrittenWithoutExponentOrIsNotThere(double value, string? payload) => Assert.Equal(payload, HomiePayload.Of(value));

    [Fact]
    public void Time_IsUtcAfterRfc3339() =>
        Assert.Equal("2026-09-07T06:00:00.000Z", HomiePayload.Of(new DateTimeOffset(2026, 9, 7, 8, 0, 0, TimeSpan.FromHours(2))));

    [Fact]
    public void Values_OfAReadingThatIsNotGood_AreNotPublished()
    {
        string? Value(string node, string id, ReadingQuality quality) =>
            HomieProperties.All.Single(p => p.Node == node && p.Id == id).Value(TestAssessment.At(TestAssessment.Start, temperatureQuality: quality));

        Assert.Equal("21.5", Value("air", "temperature", ReadingQuality.Good));
        Assert.Null(Value("air", "temperature", ReadingQuality.Frozen));
        Assert.Equal("frozen", Value("air", "quality", ReadingQuality.Frozen));
        Assert.Equal("good", Value("air", "quality", ReadingQuality.Good));
    }

    [Theory]
    [InlineData(WarmingState.Warm, null, "0")]
    [InlineData(WarmingState.Warming, 0.0, "10")]
    [InlineData(WarmingState.Warming, 4.0, "10")]
    [InlineData(WarmingState.Warming, 124.0, "120")]
    [InlineData(WarmingState.NotWarming, null, null)]
    public void WarmIn_IsZeroOfAWarmPieceAlone(WarmingState state, double? leftS, string? payload)
    {
        Assessment assessment = TestAssessment.At(TestAssessment.Start) with
        {
            Warming = new PieceWarming { State = state, TargetC = 17, TargetFrom = WarmingTarget.Air, ClearanceC = 2, LeftS = leftS, LeastS = leftS, MostS = leftS },
        };
        Assert.Equal(payload, HomieProperties.All.Single(p => p is { Node: "piece", Id: "warm-in" }).Value(assessment));
    }

    // "MAY ONLY contain lowercase letters from a to z, numbers from 0 to 9 as well as the hyphen character".
    [GeneratedRegex("^[a-z0-9-]+$")]
    private static partial Regex TopicId();
}
