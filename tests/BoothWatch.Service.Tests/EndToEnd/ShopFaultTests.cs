using BoothWatch.Readings;
using BoothWatch.Service.Outputs.Light;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Tests.EndToEnd;

/// <summary>A part that fails during the scripted day: the verdict and the lamps fall to wait, and come back after it.</summary>
public sealed class ShopFaultTests
{
    private const int MostTicksToWait = 5;

    private static readonly TimeSpan Fails = new(10, 0, 0);
    private static readonly TimeSpan Works = new(11, 0, 0);
    private static readonly TimeSpan BackBy = new(12, 30, 0);

    [Theory]
    [InlineData("boothAir", "badCrc", "booth-air-unknown", "CRC")]
    [InlineData("exhaust", "noAcknowledge", "exhaust-not-proven", "exhaust")]
    public async Task Fault_OfAPart_FallsToWaitWithItsCauseAndReturns(string sensor, string kind, string rule, string cause)
    {
        await using ShopRun shop = await ShopRun.StartAsync(
            ("demo:fault:sensor", sensor), ("demo:fault:kind", kind), ("demo:fault:from", "10:00"), ("demo:fault:until", "11:00"));

        Assessment before = TickUntil(shop, Fails);
        Assert.Equal(Verdict.Spray, before.Verdict);

        Assessment failed = before;
        for (int tick = 0; tick < MostTicksToWait && failed.Verdict != Verdict.Wait; tick++)
        {
            failed = shop.Tick();
        }

        Assert.Equal((Verdict.Wait, rule), (failed.Verdict, failed.Reasons[0].Rule));
        Assert.Contains(cause, failed.Reasons[0].Finding, StringComparison.OrdinalIgnoreCase);

        Assert.Equal(Verdict.Wait, TickUntil(shop, Works).Verdict);
        Assert.NotEqual(Verdict.Wait, TickUntil(shop, BackBy).Verdict);

        // Yellow while the piece that was brought in cold is still much colder than the air.
        Assert.Equal([Lamp.Red, Lamp.Yellow, Lamp.Green, Lamp.Red], shop.Changes.Take(4).Select(change => change.Lamp));
        Assert.NotEqual(Lamp.Red, shop.Changes[4].Lamp);
    }

    [Fact]
    public async Task Stuck_BoothPart_IsWaitAMinuteLater()
    {
        const int DwellAndStartS = 45;
        await using ShopRun shop = await ShopRun.StartAsync(
            ("demo:dayLengthS", "32400"), ("demo:startAt", "10:00"),
            ("demo:fault:sensor", "boothAir"), ("demo:fault:kind", "stuck"), ("demo:fault:from", "10:01"), ("demo:fault:until", "11:00"));

        Assessment before = TickUntil(shop, new TimeSpan(10, 1, DwellAndStartS));
        Assert.Equal(Verdict.Spray, before.Verdict);

        Assessment after = TickUntil(shop, new TimeSpan(10, 2, 5));
        Assert.Equal((Verdict.Wait, "booth-air-unknown"), (after.Verdict, after.Reasons[0].Rule));
        Assert.Contains("without the least change", after.Reasons[0].Finding, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("boothAir")]
    [InlineData("boothAirCheck")]
    public async Task Drift_OfOneOfTwoBoothParts_IsDisagreeingAndWait(string drifting)
    {
        await using ShopRun shop = await ShopRun.StartAsync(
            ("demo:dayLengthS", "32400"), ("demo:startAt", "10:00"), ("sensors:boothAirCheck:part", "sht3x"),
            ("demo:fault:sensor", drifting), ("demo:fault:kind", "drift"), ("demo:fault:from", "10:01"), ("demo:fault:until", "11:00"));

        // Their honest difference does no harm.
        Assert.Equal(Verdict.Spray, TickUntil(shop, new TimeSpan(10, 1, 0)).Verdict);

        Assessment last;
        do
        {
            last = shop.Tick();
        }
        while (last.Snapshot[Quantity.BoothHumidity].Quality == ReadingQuality.Good && shop.Now.TimeOfDay < new TimeSpan(10, 15, 0));

        Assert.Equal(ReadingQuality.Disagreeing, last.Snapshot[Quantity.BoothHumidity].Quality);
        Assert.Equal((Verdict.Wait, "booth-air-unknown"), (last.Verdict, last.Reasons[0].Rule));
        Assert.Matches("boothAir reads .* and boothAirCheck .*: one of them is wrong", last.Reasons[0].Finding);
        Assert.Equal(Lamp.Red, shop.Changes[^1].Lamp);
    }

    private static Assessment TickUntil(ShopRun shop, TimeSpan time)
    {
        Assessment last;
        do
        {
            last = shop.Tick();
        }
        while (shop.Now.Day == 0 && shop.Now.TimeOfDay < time);

        return last;
    }
}
