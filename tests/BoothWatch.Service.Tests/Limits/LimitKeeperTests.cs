using System.Threading.Channels;
using BoothWatch.Jobs;
using BoothWatch.Limits;
using BoothWatch.Service.Jobs;
using BoothWatch.Service.Limits;
using BoothWatch.Service.Tests.Jobs;

namespace BoothWatch.Service.Tests.Limits;

/// <summary>From marked coats in a real journal to the limits that hold.</summary>
public sealed class LimitKeeperTests
{
    [Fact]
    public void Limit_SwitchedOff_IsFoundAndHoldsNothing()
    {
        using LimitShop shop = new(new LimitOptions());
        shop.Coats(4, 1.0, CoatOutcome.Blushed);
        shop.Keeper.Renew();
        Assert.Equal(LimitChange.Raised, shop.Keeper.State.Limit!.Change);
        Assert.Same(shop.Policy.Configured, shop.Policy.Current);
    }

    [Fact]
    public void Limit_SwitchedOn_TakesThePlaceOfTheSetting()
    {
        using LimitShop shop = new();
        shop.Coats(4, 1.0, CoatOutcome.Blushed);
        shop.Keeper.Renew();
        ShopLimit limit = shop.Keeper.State.Limit!;
        Assert.True(limit.RequiredMarginC > 0.5);
        Assert.Equal(limit.RequiredMarginC, shop.Policy.Current.RequiredMarginC);
        Assert.Equal(limit.BlushesBelowC, shop.Policy.Current.ShopBlushesBelowC);
        Assert.Equal(4, shop.Policy.Current.ShopCoats);
        Assert.Equal(0.5, shop.Policy.Configured.RequiredMarginC);
    }

    [Fact]
    public void Limit_WithoutEnoughEvidence_LeavesTheSetting()
    {
        using LimitShop shop = new();
        shop.Coat(1, 1.0, CoatOutcome.Blushed);
        shop.Coats(19, -1.0, CoatOutcome.Clear, firstDaysAgo: 2);
        shop.Keeper.Renew();
        Assert.Equal(LimitChange.None, shop.Keeper.State.Limit!.Change);
        Assert.Equal(shop.Policy.Configured, shop.Policy.Current);
        Assert.Null(shop.Policy.Current.ShopCoats);
    }

    [Fact]
    public void Evidence_CountsWhatDidNotBlushAndLeavesOutWhatSaysNothing()
    {
        using LimitShop shop = new();
        CoatOutcome[] held = [CoatOutcome.Clear, CoatOutcome.Runs, CoatOutcome.OrangePeel, CoatOutcome.Soft];
        foreach (CoatOutcome outcome in held)
        {
            shop.Coat(1, 0.7, outcome);
        }

        shop.Coat(1, 0.7, CoatOutcome.Blushed);
        shop.Coat(1, 0.7, CoatOutcome.DrySpray);
        shop.Coat(1, null, CoatOutcome.Clear);
        shop.Coat(1, 0.7, null);
        LimitEvidence evidence = shop.Evidence;
        Assert.Equal([CoatOutcome.Blushed], evidence.Coats.Where(coat => coat.Blushed).Select(coat => coat.Outcome));
        Assert.Equal(held.Order(), evidence.Coats.Where(coat => !coat.Blushed).Select(coat => coat.Outcome).Order());
        Assert.Equal((1, 1, 1), (evidence.DrySpray, evidence.AirNotKnown, evidence.NotMarked));
        Assert.All(evidence.Coats, coat => Assert.Equal((0.7, 0.9), (coat.MarginC, coat.UncertaintyC)));
    }

    [Fact]
    public void Evidence_FollowsUndoAndCorrection()
    {
        using LimitShop shop = new();
        (Job job, long coat) = shop.Coat(1, 0.7, CoatOutcome.Blushed);
        shop.Store.Append(job.Id, new OutcomeMarked(coat, CoatOutcome.Clear, "looked again"), shop.Now, EntrySource.Page);
        Assert.Equal(CoatOutcome.Clear, Assert.Single(shop.Evidence.Coats).Outcome);
        shop.Store.Append(job.Id, new CoatCorrected(coat, job.LastCoat!.Details, TestJob.Moment(2.2), "more retarder"), shop.Now, EntrySource.Page);
        Assert.Equal(2.2, Assert.Single(shop.Evidence.Coats).MarginC);
        foreach (JobEntry entry in job.Entries.Where(entry => entry.Change is CoatMarked))
        {
            shop.Store.Append(job.Id, new TakenBack(entry.Id), shop.Now, EntrySource.Page);
        }

        Assert.Empty(shop.Evidence.Coats);
    }

    [Fact]
    public void Evidence_OfInventedCoats_CountsInTheJournalOfTheDemoOnly()
    {
        foreach (bool demo in new[] { false, true })
        {
            using LimitShop shop = new(demo: demo);
            CoatDetails details = TestJob.Coat(0, stop: 6) with { Start = shop.Now.AddDays(-1), Stop = shop.Now.AddDays(-1).AddMinutes(6) };
            shop.Store.Import(
                [new JobImport(TestJob.Details, details.Start, [new CoatImport(details, TestJob.Moment(0.4), CoatOutcome.Blushed, "")], null)], EntrySource.Demo, onlyIfEmpty: true);
            Assert.Equal(demo ? 1 : 0, shop.Evidence.Coats.Count);
        }
    }

    [Fact]
    public void Evidence_OutsideItsTime_DoesNotCount()
    {
        using (LimitShop shop = new(new LimitOptions { WindowDays = 30 }))
        {
            shop.Coat(29, 0.7, CoatOutcome.Clear);
            shop.Coat(31, 0.7, CoatOutcome.Clear);
            Assert.Single(shop.Evidence.Coats);
        }

        LimitOptions replaced = new();
        using LimitShop other = new(replaced);
        replaced.Since = other.Now.AddDays(-10).ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
        other.Coat(8, 0.7, CoatOutcome.Clear);
        other.Coat(12, 0.7, CoatOutcome.Clear);
        Assert.Single(other.Evidence.Coats);
    }

    [Fact]
    public void Limit_WhileACoatIsSprayed_DoesNotChange()
    {
        using LimitShop shop = new();
        shop.Keeper.Renew();
        Job running = shop.Begin(minutesAgo: 3);
        shop.Coats(4, 1.0, CoatOutcome.Blushed);
        shop.Keeper.Renew();
        Assert.True(shop.Keeper.State.WaitsForCoat);
        Assert.Equal(0.5, shop.Policy.Current.RequiredMarginC);

        shop.Store.Append(running.Id, new CoatStopped(running.LastCoat!.Id, shop.Now), shop.Now, EntrySource.Page);
        shop.Keeper.Renew();
        Assert.False(shop.Keeper.State.WaitsForCoat);
        Assert.True(shop.Policy.Current.RequiredMarginC > 0.5);
    }

    [Fact]
    public void Limit_WhileAnEarlierCoatWasNeverEnded_Changes()
    {
        using LimitShop shop = new();
        shop.Keeper.Renew();
        shop.Begin(minutesAgo: 61);
        shop.Coats(4, 1.0, CoatOutcome.Blushed);
        shop.Keeper.Renew();
        Assert.True(shop.Policy.Current.RequiredMarginC > 0.5);
    }

    [Fact]
    public void Limit_AfterARestartInTheMiddleOfACoat_HoldsAtOnce()
    {
        using LimitShop shop = new();
        shop.Begin(minutesAgo: 3);
        shop.Coats(4, 1.0, CoatOutcome.Blushed);
        shop.Keeper.Renew();
        Assert.True(shop.Policy.Current.RequiredMarginC > 0.5);
    }

    [Fact]
    public void Limit_FoundOnlyLaterAfterARestart_DoesNotChangeInTheMiddleOfACoat()
    {
        using LimitShop shop = new();
        shop.Coats(4, 1.0, CoatOutcome.Blushed);
        using (shop.Unreadable())
        {
            shop.Keeper.Renew();
            Assert.NotNull(shop.Keeper.State.Trouble);
        }

        Job running = shop.Begin(minutesAgo: 3);
        shop.Keeper.Renew();
        Assert.Null(shop.Keeper.State.Trouble);
        Assert.True(shop.Keeper.State.WaitsForCoat);
        Assert.Equal(0.5, shop.Policy.Current.RequiredMarginC);

        shop.Store.Append(running.Id, new CoatStopped(running.LastCoat!.Id, shop.Now), shop.Now, EntrySource.Page);
        shop.Keeper.Renew();
        Assert.True(shop.Policy.Current.RequiredMarginC > 0.5);
    }

    [Fact]
    public void Journal_ThatCannotBeRead_LoosensNothing()
    {
        using (LimitShop raised = new())
        {
            raised.Coats(4, 1.0, CoatOutcome.Blushed);
            raised.Keeper.Renew();
            double before = raised.Policy.Current.RequiredMarginC;
            raised.Break();
            raised.Keeper.Renew();
            Assert.NotNull(raised.Keeper.State.Trouble);
            Assert.Null(raised.Keeper.State.Limit);
            Assert.Equal(before, raised.Policy.Current.RequiredMarginC);
        }

        using LimitShop lowered = new();
        lowered.Coats(25, -1.0, CoatOutcome.Clear);
        lowered.Keeper.Renew();
        Assert.True(lowered.Policy.Current.RequiredMarginC < 0.5);
        lowered.Break();
        lowered.Keeper.Renew();
        Assert.Equal(0.5, lowered.Policy.Current.RequiredMarginC);
    }

    [Fact]
    public async Task Keeper_Running_FindsTheLimitWhenAnOutcomeIsMarked()
    {
        using LimitShop shop = new();
        Channel<bool> looked = Channel.CreateUnbounded<bool>();
        shop.Keeper.Looked += () => looked.Writer.TryWrite(true);
        await shop.Keeper.StartAsync(CancellationToken.None);
        await Until(() => shop.Keeper.State.Evidence is not null, looked.Reader);
        shop.Coats(4, 1.0, CoatOutcome.Blushed);
        await Until(() => shop.Keeper.State.Evidence!.Coats.Count == 4, looked.Reader);
        Assert.True(shop.Policy.Current.RequiredMarginC > 0.5);
        await shop.Keeper.StopAsync(CancellationToken.None);
    }

    // The keeper works on a thread of its own; its clock stands still, so only what was marked can wake it.
    private static async Task Until(Func<bool> holds, ChannelReader<bool> looked)
    {
        using CancellationTokenSource late = new(TimeSpan.FromSeconds(60));
        while (!holds())
        {
            await looked.ReadAsync(late.Token);
        }
    }
}
