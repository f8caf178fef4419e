using BoothWatch.Service.Records;

namespace BoothWatch.Service.Tests.Records;

public sealed class RecordOptionsTests
{
    [Theory]
    [InlineData("A4")]
    [InlineData("letter")]
    public void Paper_ThatIsKnown_IsGood(string paper) =>
        Assert.True(new RecordOptionsValidator().Validate(null, new RecordOptions { Paper = paper }).Succeeded);

    [Fact]
    public void Paper_ThatIsNot_IsNamedWithTheFix() =>
        Assert.Equal(["record:paper is \"A3\"; give A4 or Letter, for example A4"], new RecordOptionsValidator().Validate(null, new RecordOptions { Paper = "A3" }).Failures!);
}
