using BoothWatch.Jobs;
using BoothWatch.Service.Jobs;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;

namespace BoothWatch.Service.Tests.Jobs;

/// <summary>The invented past must agree with the model that the shop shows it with.</summary>
public sealed class DemoPastTests
{
    [Fact]
    public async Task Past_OfTheDemo_BlushesWhereTheModelSaysSoAndNowhereElse()
    {
        await using JobHost host = await JobHost.Start(("jobs:demoPast", "true"));
        JobStore store = host.Services.GetRequiredService<JobStore>();
        host.Services.GetServices<IHostedService>().OfType<DemoPast>().Single().Create(CancellationToken.None);

        RowPage<CoatRow> coats = store.Coats(new CoatQuery());
        Assert.All(coats.Rows, coat => Assert.True(coat.IsDemo));
        CoatRow blushed = Assert.Single(coats.Rows, coat => coat.Outcome == CoatOutcome.Blushed);
        Assert.InRange(blushed.MarginC!.Value, -5, -0.2);
        Assert.All(coats.Rows.Where(coat => coat.Outcome == CoatOutcome.Clear), coat => Assert.InRange(coat.MarginC!.Value, 0.5, 30));

        JobCoat coat = store.FindByCoat(blushed.Id)!.Coats.Single(c => c.Id == blushed.Id);
        CoatAir air = host.Services.GetRequiredService<CoatAirQuery>().Of(coat, DateTimeOffset.MaxValue);
        Assert.Equal(coat.Moment!.DewPointC, air.DewPointC!.Mean, 0.3);
        Assert.Single(store.Running());

        // A second time nothing is added.
        host.Services.GetServices<IHostedService>().OfType<DemoPast>().Single().Create(CancellationToken.None);
        Assert.Equal(coats.Total, store.Coats(new CoatQuery()).Total);
    }
}
