using BoothWatch.Verdicts;

namespace BoothWatch.Service.Tests.EndToEnd;

/// <summary>While parts are proved, nothing leads to spray.</summary>
public sealed class ProvingTests
{
    [Fact]
    public async Task Proving_WithEveryEmulatedPartContent_StaysAtWait()
    {
        await using ShopRun shop = await ShopRun.StartAsync(("sensors:proving", "true"), ("demo:startAt", "10:00"));

        for (int tick = 0; tick < 45; tick++)
        {
            Assessment assessment = shop.Tick();
            Assert.Equal((Verdict.Wait, "parts-not-proved"), (assessment.Verdict, assessment.Reasons[0].Rule));
        }
    }
}
