using BoothWatch.Service.Coat;
using BoothWatch.Service.Outputs.Mqtt;

namespace BoothWatch.Service.Tests.Outputs.Mqtt;

public class TopicLevelTests
{
    [Theory]
    [InlineData("Harbour Lane", "harbour-lane")]
    [InlineData("corner", "corner")]
    [InlineData("  No. 3 / back  ", "no-3-back")]
    [InlineData("Möbel & Söhne", "m-bel-s-hne")]
    public void Level_OfAName_IsWhatTheConventionAllows(string name, string level) => Assert.Equal(level, TopicLevel.Of(name));

    [Fact]
    public void Level_OfANameWithoutAnyAllowedCharacter_IsACodeOfItsOwn()
    {
        Assert.NotEqual(TopicLevel.Of("北"), TopicLevel.Of("南"));
        Assert.Matches("^[a-z0-9][a-z0-9-]*$", TopicLevel.Of("北"));
    }

    [Fact]
    public void Topics_OfTheDefaultBooth_CarryShopAndBooth()
    {
        MqttTopics topics = new(new MqttOptions(), new BoothOptions());

        // The Homie Convention 5.0: "homie" / "5" / device id / attribute.
        Assert.Equal("homie/5/harbour-lane-corner/$state", topics.State);
        Assert.Equal("boothwatch/harbour-lane/corner/assessment", topics.Assessment);
    }
}
