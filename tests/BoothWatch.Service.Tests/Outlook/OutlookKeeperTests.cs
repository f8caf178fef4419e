using System.Collections.Immutable;
using BoothWatch.Film;
using BoothWatch.Outlook;
using BoothWatch.Service.Outlook;
using BoothWatch.Service.Page;
using BoothWatch.Service.Tests.Jobs;
using BoothWatch.Service.Tests.Page;
using BoothWatch.Verdicts;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;

namespace BoothWatch.Service.Tests.Outlook;

public sealed class OutlookKeeperTests
{
    private static readonly Assessment Fair = WithAir(Samples.Spray, 22, 8);

    // The rest of the booth's own clock is that of the host; the feed has one that can be turned.
    private readonly FakeTimeProvider _time = new(Samples.Noon);

    [Fact]
    public async Task AVerdictThatWaitsForSomethingElse_SilencesTheOutlookAtOnce()
    {
        await using JobHost host = await JobHost.Start([.. OutlookSample.Morning]);
        OutlookSample.Fill(host.Services.GetRequiredService<BoothWatch.Service.Outputs.Series.JournalLocation>().Path, 40, (back, hour) => OutlookSample.Wetter(back, hour));
        (OutlookKeeper keeper, PageFeed feed) = await Keeper(host);
        OutlookWords words = host.Services.GetRequiredService<OutlookWords>();
        Assert.Equal(OutlookSilence.None, keeper.State.Outlook.Silence);

        foreach ((string rule, string finding) in new[]
        {
            ("clock-unproven", "the clock is not set"), ("parts-not-proved", "emulated readings are mixed in while parts are proved"),
            ("too-cold", "air 8.0 °C, under 10.0 °C"), ("too-hot", "air 36.0 °C, over 35.0 °C"), ("film-does-not-set", "this coat does not set"),
        })
        {
            await feed.HandleAsync(Waiting(rule, finding), default);
            Assert.Equal((OutlookWord.Silent, OutlookSilence.VerdictWaits), (keeper.State.Outlook.Word, keeper.State.Outlook.Silence));
            Assert.Equal($"the verdict waits, and not for the margin: {finding}", words.Meaning(keeper.State));
            keeper.Renew(CancellationToken.None);
            Assert.Equal((OutlookWord.Silent, OutlookSilence.VerdictWaits), (keeper.State.Outlook.Word, keeper.State.Outlook.Silence));
            await feed.HandleAsync(Fair, default);
            Assert.True(keeper.IsOvertaken);
            keeper.Renew(CancellationToken.None);
            Assert.Equal(OutlookSilence.None, keeper.State.Outlook.Silence);
        }

        // A piece as warm as this air would be too near its dew point, whatever the cup holds.
        await feed.HandleAsync(WithAir(Samples.Spray, 12, 10), default);
        Assert.Equal("the verdict waits, and not for the margin: air 12.0 °C, 2.0 °C over the dew point", words.Meaning(keeper.State));

        // A fan that is off is no reason: it is switched on before the gun is loaded.
        await feed.HandleAsync(Waiting("exhaust-not-proven", "the exhaust is off"), default);
        Assert.Equal(OutlookSilence.None, keeper.State.Outlook.Silence);
    }

    [Fact]
    public async Task AirThatIsLost_OrAnAssessmentThatIsOld_SilencesTheOutlookAtOnce()
    {
        await using JobHost host = await JobHost.Start([.. OutlookSample.Morning]);
        OutlookSample.Fill(host.Services.GetRequiredService<BoothWatch.Service.Outputs.Series.JournalLocation>().Path, 40, (back, hour) => OutlookSample.Wetter(back, hour));
        (OutlookKeeper keeper, PageFeed feed) = await Keeper(host);
        await feed.HandleAsync(Samples.Blind, default);
        Assert.Equal(OutlookSilence.AirUnknown, keeper.State.Outlook.Silence);
        await feed.HandleAsync(Fair, default);
        Assert.Equal(OutlookSilence.None, keeper.State.Outlook.Silence);
        _time.Advance(CurrentState.StaleAfter + TimeSpan.FromSeconds(1));
        Assert.Equal((OutlookWord.Silent, OutlookSilence.AirUnknown), (keeper.State.Outlook.Word, keeper.State.Outlook.Silence));
    }

    [Theory]
    [InlineData(22.4, 8.3, false)]
    [InlineData(22, 8.6, true)]
    [InlineData(23.1, 8, true)]
    public async Task AirThatHasChanged_AsksForAnotherOutlook(double airC, double dewPointC, bool isOvertaken)
    {
        await using JobHost host = await JobHost.Start(("outlook:demoPast", "false"));
        (OutlookKeeper keeper, PageFeed feed) = await Keeper(host);
        await feed.HandleAsync(WithAir(Samples.Spray, airC, dewPointC), default);
        Assert.Equal(isOvertaken, keeper.IsOvertaken);
    }

    [Fact]
    public async Task AirThatHasChanged_IsAnsweredWithinSeconds_AndNotMinutes()
    {
        await using JobHost host = await JobHost.Start([.. OutlookSample.Morning]);
        PageFeed feed = new(_time);
        await feed.HandleAsync(Fair, default);
        using OutlookKeeper keeper = ActivatorUtilities.CreateInstance<OutlookKeeper>(host.Services, feed, _time);
        await keeper.StartAsync(CancellationToken.None);
        await Pass(() => keeper.State.At is not null, Fair, feed);
        OutlookState first = keeper.State;
        TimeSpan took = await Pass(() => !ReferenceEquals(keeper.State, first), WithAir(Samples.Spray, 22, 9), feed);
        Assert.InRange(took, OutlookKeeper.Soonest, TimeSpan.FromMinutes(2));
        await keeper.StopAsync(CancellationToken.None);
    }

    [Fact]
    public async Task AFaultOfOurOwn_IsASilenceThatSaysSo_AndEndsNothing()
    {
        await using JobHost host = await JobHost.Start(("outlook:demoPast", "false"));
        CoatPlan broken = host.Services.GetRequiredService<CoatPlan>() with { Ladder = ImmutableArray<(double, BoothWatch.Solvents.Mix)>.Empty };
        (OutlookKeeper keeper, _) = await Keeper(host, broken);
        Assert.Equal(OutlookSilence.Failed, keeper.State.Outlook.Silence);
        Assert.StartsWith("it could not be worked out (", host.Services.GetRequiredService<OutlookWords>().Meaning(keeper.State), StringComparison.Ordinal);
    }

    private static Assessment WithAir(Assessment assessment, double airC, double dewPointC)
    {
        var air = BoothWatch.Air.MoistAir.FromDewPoint(airC, dewPointC, 101_325);
        return assessment with { Air = new AirFindings(airC, air.RelativeHumidityPct, air.PressurePa, dewPointC, 0.4, air.HumidityRatio, airC) };
    }

    private static Assessment Waiting(string rule, string finding) => Fair with { Verdict = Verdict.Wait, Reasons = [new Reason(rule, Verdict.Wait, finding, "wait")] };

    // Lets the clock go on, with an assessment every few seconds, until something is so.
    private async Task<TimeSpan> Pass(Func<bool> isSo, Assessment assessment, PageFeed feed)
    {
        TimeSpan passed = TimeSpan.Zero;
        while (!isSo() && passed < TimeSpan.FromMinutes(4))
        {
            await feed.HandleAsync(assessment, default);
            _time.Advance(OutlookKeeper.Soonest);
            passed += OutlookKeeper.Soonest;
            for (int i = 0; i < 20 && !isSo(); i++)
            {
                await Task.Delay(TimeSpan.FromMilliseconds(25), TimeProvider.System);
            }
        }

        return passed;
    }

    private async Task<(OutlookKeeper Keeper, PageFeed Feed)> Keeper(JobHost host, params object[] others)
    {
        PageFeed feed = new(_time);
        await feed.HandleAsync(Fair, default);
        OutlookKeeper keeper = ActivatorUtilities.CreateInstance<OutlookKeeper>(host.Services, [feed, .. others]);
        keeper.Renew(CancellationToken.None);
        return (keeper, feed);
    }
}
