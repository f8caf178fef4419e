using BoothWatch.Service.Outputs.Light;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Tests.Outputs.Light;

public class LightOptionsValidatorTests
{
    [Fact]
    public void Validate_Defaults_Succeed() => Assert.True(Check(new LightOptions()).Succeeded);

    [Theory]
    [InlineData("real")]
    [InlineData("Emulated")]
    public void Validate_EitherSource_Succeeds(string source) => Assert.True(Check(new LightOptions { Source = source }).Succeeded);

    [Theory]
    [InlineData("")]
    [InlineData("1")]
    [InlineData("gpio")]
    public void Validate_AnotherSource_NamesTheChoice(string source) => Assert.Equal(
        [$"light:source is {source}; give emulated or real"], Check(new LightOptions { Source = source }).Failures);

    [Fact]
    public void Validate_SeveralWrong_AreAllReported()
    {
        LightOptions options = new() { GreenPin = 99, YellowPin = -1, RedPin = 24, BuzzerPin = 24, WaitIfSilentForS = double.NaN };
        Assert.Equal(
            [
                "light:greenPin is 99; give a GPIO number from 0 to 53, for example 17",
                "light:yellowPin is -1; give a GPIO number from 0 to 53, for example 27",
                "light:redPin and light:buzzerPin are both 24; give each its own GPIO number",
                "light:waitIfSilentForS is NaN; give a time from 2 to 6 s, for example 6",
            ],
            Check(options).Failures);
    }

    [Theory]
    [InlineData(0, 53, true)]
    [InlineData(0, 54, false)]
    [InlineData(17, 17, false)]
    public void Validate_PinsAtTheEdges_AreJudged(int green, int red, bool succeeds) =>
        Assert.Equal(succeeds, Check(new LightOptions { GreenPin = green, RedPin = red }).Succeeded);

    [Theory]
    [InlineData(1.9, false)]
    [InlineData(2, true)]
    [InlineData(6, true)]
    [InlineData(6.1, false)]
    public void Validate_SilenceAtTheEdges_IsJudged(double seconds, bool succeeds) =>
        Assert.Equal(succeeds, Check(new LightOptions { WaitIfSilentForS = seconds }).Succeeded);

    private static ValidateOptionsResult Check(LightOptions options) => new LightOptionsValidator().Validate(null, options);
}
