using BoothWatch.Service.Outputs;
using BoothWatch.Service.Outputs.Pump;
using BoothWatch.Verdicts;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;

namespace BoothWatch.Service.Tests.Outputs.Pump;

public sealed class OutputPumpSetupTests
{
    [Fact]
    public async Task AddOutput_ForTwoOutputs_StartsBothAndFansOutToBoth()
    {
        await using ServiceProvider provider = new ServiceCollection()
            .AddLogging()
            .AddOutput<First>()
            .AddOutput<Second>(options => options.Capacity = 1)
            .BuildServiceProvider();
        IHostedService[] hosted = [.. provider.GetServices<IHostedService>()];
        Assert.Equal(2, hosted.Distinct().Count());
        foreach (IHostedService service in hosted)
        {
            await service.StartAsync(CancellationToken.None);
        }

        AssessmentFanOut fanOut = provider.GetRequiredService<AssessmentFanOut>();
        fanOut.Post(TestAssessment.At(TestAssessment.Start));
        foreach (IHostedService service in hosted)
        {
            await service.StopAsync(CancellationToken.None);
        }

        Assert.Equal([("first", 1L), ("second", 1L)], fanOut.Health.Select(h => (h.Name, h.Handled)));
    }

    private sealed class First : IAssessmentOutput
    {
        public string Name => "first";

        public Task HandleAsync(Assessment assessment, CancellationToken cancellationToken) => Task.CompletedTask;
    }

    private sealed class Second : IAssessmentOutput
    {
        public string Name => "second";

        public Task HandleAsync(Assessment assessment, CancellationToken cancellationToken) => Task.CompletedTask;
    }
}
