using System.Device.Gpio;
using BoothWatch.Service.Outputs.Light;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Tests.Outputs.Light;

/// <summary>Pins that fail: the light waits, says so, tries again, and never throws.</summary>
public class BoothLightFaultTests
{
    [Fact]
    public void Fault_OnGreen_ShowsRedAtOnceAndComesBackByItself()
    {
        using LightBench bench = new();
        bench.Run(1, Verdict.Spray);
        bench.News();
        bench.Controller.SetPinMode(LightBench.Green, PinMode.Input);
        // Its wink at 1.85 s does not get through, and red lights in the same step.
        Assert.Equal(["1.00 green open", "1.85 red high"], bench.Run(1, Verdict.Spray).News());
        LightHealth health = bench.Light.Health;
        Assert.Equal((Verdict.Wait, true, 1), (health.Shown, health.Faulty, health.FaultCount));
        Assert.Equal("Green on GPIO 17: driven Low, but it does not read so", health.LastFault);

        // Opened afresh after a second, held at wait for five, then green again.
        Assert.Equal(
            ["2.85 green low", "6.90 red low", "6.90 green high"],
            bench.Run(5.2, Verdict.Spray).News());
        Assert.False(bench.Light.Health.Faulty);
        Assert.Equal(["Error", "Information"], bench.Logged.Select(line => line.Split(':')[0]));
        Assert.False(bench.GreenAndRedTogether());
    }

    [Fact]
    public void Fault_PinTakenByAnother_WaitsAndRetriesUntilItIsFree()
    {
        using LightBench bench = new(before: controller => controller.OpenPin(LightBench.Yellow, PinMode.Input));
        Assert.Equal(["0.00 green low", "0.00 red high"], bench.News());
        bench.Run(20, Verdict.Spray);
        Assert.Empty(bench.News());
        Assert.Equal(Verdict.Wait, bench.Light.Health.Shown);
        // At start and then once a second: tries, not a storm.
        Assert.Equal(21, bench.Light.Health.FaultCount);
        Assert.Single(bench.Logged);

        bench.Controller.ClosePin(LightBench.Yellow);
        bench.Run(7, Verdict.Spray);
        Assert.Equal(Verdict.Spray, bench.Light.Health.Shown);
        Assert.False(bench.GreenAndRedTogether());
    }

    [Fact]
    public void Fault_RedCannotBeSwitchedOff_GreenIsNotLit()
    {
        using LightBench bench = new();
        bench.News();
        bench.Controller.SetPinMode(LightBench.Red, PinMode.Input);
        bench.Run(0.5, Verdict.Spray);
        Assert.Equal(["0.00 red open"], bench.News());
        Assert.Equal(Verdict.Wait, bench.Light.Health.Shown);
    }

    [Fact]
    public void Fault_NoController_NeverThrowsAndStaysAtWait()
    {
        LightOptions options = new();
        Microsoft.Extensions.Time.Testing.FakeTimeProvider time = new();
        using BoothLight light = new(
            new LampPins(() => throw new PlatformNotSupportedException("no GPIO here"), options),
            options,
            time,
            Microsoft.Extensions.Logging.Abstractions.NullLogger<BoothLight>.Instance);
        for (int step = 0; step < 200; step++)
        {
            light.Show(Verdict.Spray);
            time.Advance(LightPatterns.Step);
        }

        Assert.Equal(Verdict.Wait, light.Health.Shown);
        Assert.True(light.Health.Faulty);
        Assert.Contains("no GPIO here", light.Health.LastFault, StringComparison.Ordinal);
    }

    [Fact]
    public void Fault_PinIsShortedToGround_ReadsBackWrongAndWaits()
    {
        using LightBench bench = new(make: driver => new ShortedGreen(driver));
        bench.Run(3, Verdict.Spray);
        Assert.Equal(Verdict.Wait, bench.Light.Health.Shown);
        Assert.Equal("Green on GPIO 17: driven High, but it does not read so", bench.Light.Health.LastFault);
        Assert.Equal(PinValue.High, bench.Pins.Driven(LightBench.Red));
    }

    [Fact]
    public void Fault_OnStop_DoesNotThrow()
    {
        using LightBench bench = new();
        bench.Run(1, Verdict.Spray);
        bench.Controller.SetPinMode(LightBench.Green, PinMode.Input);
        bench.Light.Dispose();
        Assert.Equal(PinValue.High, bench.Pins.Driven(LightBench.Red));
    }

    [Fact]
    public void Fault_ThatIsNoGpioFault_IsNotSwallowed() => Assert.Throws<FormatException>(() => new BoothLight(
        new LampPins(() => throw new FormatException("a defect"), new LightOptions()),
        new LightOptions(),
        TimeProvider.System,
        Microsoft.Extensions.Logging.Abstractions.NullLogger<BoothLight>.Instance));

    [Fact]
    public async Task Write_ThatHangs_EndsTheLifeOfTheLightUntilItReturns()
    {
        using ManualResetEventSlim entered = new();
        using ManualResetEventSlim release = new();
        using LightBench bench = new(make: driver => new HangingGreen(driver, entered, release));
        bench.Run(3, Verdict.Wait);
        Assert.True(bench.Light.IsAlive);

        bench.Light.Show(Verdict.Spray);
        Task hanging = Task.Run(() => bench.Time.Advance(LightPatterns.Step));
        Assert.True(entered.Wait(TimeSpan.FromSeconds(30)));
        bench.Run(1.9, Verdict.Wait);
        Assert.True(bench.Light.IsAlive);
        bench.Run(0.2, Verdict.Wait);
        Assert.False(bench.Light.IsAlive);
        Assert.False(OutputView.LineOf(bench.Light).Working);
        Assert.False(OutputView.StatusOf(bench.Light).Working);

        release.Set();
        await hanging;
        bench.Run(0.1, Verdict.Wait);
        Assert.True(bench.Light.IsAlive);
        Assert.Equal(PinValue.High, bench.Pins.Driven(LightBench.Red));
    }

    private sealed class HangingGreen(GpioDriver driver, ManualResetEventSlim entered, ManualResetEventSlim release) : GpioController(driver)
    {
        public override void Write(int pinNumber, PinValue value)
        {
            if (pinNumber == LightBench.Green && value == PinValue.High)
            {
                entered.Set();
                release.Wait();
            }

            base.Write(pinNumber, value);
        }
    }

    private sealed class ShortedGreen(GpioDriver driver) : GpioController(driver)
    {
        public override PinValue Read(int pinNumber) => pinNumber == LightBench.Green ? PinValue.Low : base.Read(pinNumber);
    }
}
