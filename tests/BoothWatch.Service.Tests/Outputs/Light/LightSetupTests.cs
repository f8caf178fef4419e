using BoothWatch.Service.Outputs;
using BoothWatch.Service.Outputs.Light;
using BoothWatch.Service.Sensors;
using BoothWatch.Verdicts;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;
using Microsoft.Extensions.Time.Testing;

namespace BoothWatch.Service.Tests.Outputs.Light;

public class LightSetupTests
{
    [Fact]
    public void AddLight_FromConfiguration_DrivesTheVirtualPinsGiven()
    {
        FakeTimeProvider time = new();
        using ServiceProvider provider = Build(time, new() { ["light:greenPin"] = "5", ["light:activeLow"] = "true" });
        IVerdictLight light = provider.GetRequiredService<IVerdictLight>();
        light.Show(Verdict.Spray);
        time.Advance(LightPatterns.Step);
        Assert.Same(provider.GetRequiredService<BoothLight>(), light);
        Assert.Equal(System.Device.Gpio.PinValue.Low, provider.GetRequiredService<GpioSource>().Virtual.Driven(5));
    }

    [Fact]
    public void AddLight_Disposed_LeavesTheLampsAtWaitBeforeThePinsClose()
    {
        FakeTimeProvider time = new();
        ServiceProvider provider = Build(time, []);
        provider.GetRequiredService<IVerdictLight>().Show(Verdict.Spray);
        time.Advance(LightPatterns.Step);
        GpioSource pins = provider.GetRequiredService<GpioSource>();
        provider.Dispose();
        // Green off, red on, and only then every pin open.
        Assert.Equal(
            [(17, "Low"), (22, "High")],
            pins.Virtual.Changes.Where(change => change.Value is not null).TakeLast(2).Select(change => (change.Pin, change.Value.ToString())));
        Assert.Equal(3, pins.Virtual.Changes.Reverse().TakeWhile(change => change.Value is null).Count());
    }

    [Fact]
    public void AddLight_WrongPin_FailsWithTheSetting()
    {
        using ServiceProvider provider = Build(new FakeTimeProvider(), new() { ["light:redPin"] = "17" });
        OptionsValidationException wrong = Assert.Throws<OptionsValidationException>(() => provider.GetRequiredService<IVerdictLight>());
        Assert.Contains("light:greenPin and light:redPin are both 17", wrong.Message, StringComparison.Ordinal);
    }

    private static ServiceProvider Build(TimeProvider time, Dictionary<string, string?> settings) => new ServiceCollection()
        .AddSingleton(time)
        .AddLogging()
        .AddSingleton<IConfiguration>(new ConfigurationBuilder().AddInMemoryCollection(settings).Build())
        .AddLight()
        .BuildServiceProvider();
}
