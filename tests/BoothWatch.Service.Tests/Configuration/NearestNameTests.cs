using BoothWatch.Service.Configuration;

namespace BoothWatch.Service.Tests.Configuration;

public class NearestNameTests
{
    private static readonly string[] Pins = ["greenPin", "yellowPin", "redPin", "buzzerPin"];

    [Theory]
    [InlineData("greenpin", "greenPin")]
    [InlineData("grenPin", "greenPin")]
    [InlineData("geerPin", "greenPin")]
    [InlineData("buzerPins", "buzzerPin")]
    [InlineData("frequency", null)]
    public void Of_MistypedName_FindsTheOneMeant(string written, string? meant) => Assert.Equal(meant, NearestName.Of(written, Pins));

    [Fact]
    public void Hint_WithoutANearName_ListsTheKnownOnes() =>
        Assert.Equal("known: buzzerPin, greenPin, redPin, yellowPin", NearestName.Hint("frequency", Pins));
}
