using BoothWatch.Service.Outputs.Light;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Tests.EndToEnd;

/// <summary>One day at the scripted shop through the service as shipped, against a record that a person has reviewed.</summary>
public sealed class ShopDayTests
{
    private const string Reviewed = "tests/BoothWatch.Service.Tests/EndToEnd/shop-day.txt";

    // A few ticks of 2.25 shop minutes: noise and rounding may move a change so far, not farther.
    private static readonly TimeSpan Tolerance = TimeSpan.FromMinutes(10);

    [Fact]
    public async Task ShopDay_AsShipped_GoesAsReviewed()
    {
        await using ShopRun shop = await ShopRun.StartAsync();

        while (shop.Now.Day == 0)
        {
            shop.Tick();
        }

        Assert.Equal([Verdict.Wait, Verdict.SlowDown, Verdict.Spray, Verdict.SlowDown, Verdict.Wait], shop.Changes.Select(change => change.Verdict));
        AssertAsReviewed(shop.Changes);
        Assert.Equal(
            shop.Changes.Select(change => (change.Verdict, change.Rule)),
            shop.Journalled().Select(change => (change.To, change.Reasons[0].Rule)));
        Assert.Equal(Lamp.Red, (await shop.StopAsync())[^1]);
    }

    private static void AssertAsReviewed(IReadOnlyList<VerdictLine> actual)
    {
        IReadOnlyList<VerdictLine> reviewed = VerdictLine.Parse(RepositoryFile.Read(Reviewed));
        bool same = actual.Count == reviewed.Count && actual.Zip(reviewed).All(pair => pair.First.IsNear(pair.Second, Tolerance));
        Assert.True(
            same,
            $"""
            The day went differently from {Reviewed}.
            If a finisher would agree with it, replace the lines of that file by these:

            {string.Join('\n', actual)}

            """);
    }
}
