using BoothWatch.Service.Outputs.Pump;
using BoothWatch.Service.Outputs.Series;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Tests.Outputs.Series;

public sealed class SeriesSetupTests
{
    [Theory]
    [InlineData(true, "demo.db")]
    [InlineData(false, "journal.db")]
    public async Task AddSeries_WithAFolder_JournalsWhatIsPostedAndClosesTheFile(bool isDemo, string file)
    {
        using var folder = new JournalFolder();
        string path = Path.Combine(folder.Folder, file);
        await using (ServiceProvider provider = Provider(isDemo, ("series:folder", folder.Folder)))
        {
            IHostedService pump = Assert.Single(provider.GetServices<IHostedService>());
            await pump.StartAsync(CancellationToken.None);
            provider.GetRequiredService<AssessmentFanOut>().Post(TestAssessment.At(TestAssessment.Start));
            await pump.StopAsync(CancellationToken.None);

            Assert.Single(provider.GetRequiredService<SeriesQuery>().History(TestAssessment.Start, TestAssessment.Start.AddSeconds(1)).Points);
            OutputHealth health = Assert.Single(provider.GetRequiredService<AssessmentFanOut>().Health);
            Assert.Equal(("series", 1L, 0L), (health.Name, health.Handled, health.Failures));
        }

        // A clean end merges the log, so that the one file is whole.
        Assert.Equal([path], Directory.GetFiles(folder.Folder));
    }

    [Fact]
    public void AddSeries_WithABadSetting_FailsAtStart()
    {
        using ServiceProvider provider = Provider(false, ("series:rawDays", "0"));

        OptionsValidationException error = Assert.Throws<OptionsValidationException>(
            () => provider.GetRequiredService<IStartupValidator>().Validate());

        Assert.Contains("series:rawDays is 0", error.Message, StringComparison.Ordinal);
    }

    private static ServiceProvider Provider(bool isDemo, (string Key, string Value) setting) => new ServiceCollection()
        .AddLogging()
        .AddSingleton<IConfiguration>(new ConfigurationBuilder()
            .AddInMemoryCollection([new(setting.Key, setting.Value)]).Build())
        .AddSeries(_ => isDemo)
        .BuildServiceProvider();
}
