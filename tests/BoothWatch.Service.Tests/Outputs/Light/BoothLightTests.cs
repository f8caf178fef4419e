using System.Device.Gpio;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Tests.Outputs.Light;

/// <summary>Pin by pin in time.</summary>
public class BoothLightTests
{
    [Fact]
    public void Start_ShowsWaitAtOnce_OffLampsFirst()
    {
        using LightBench bench = new();
        Assert.Equal(["0.00 green low", "0.00 yellow low", "0.00 red high"], bench.News());
        Assert.Equal(Verdict.Wait, bench.Light.Health.Shown);
    }

    [Fact]
    public void Wait_IsSteadyRed_WithoutAnyWrite()
    {
        using LightBench bench = new();
        bench.News();
        Assert.Empty(bench.Run(20, Verdict.Wait).News());
        Assert.Equal(PinValue.High, bench.Pins.Driven(LightBench.Red));
    }

    [Fact]
    public void Spray_IsGreenWithAShortWinkEveryTwoSeconds()
    {
        using LightBench bench = new();
        bench.News();
        Assert.Equal(
            [
                "0.05 red low", "0.05 green high",
                "1.85 green low", "2.05 green high",
                "3.85 green low", "4.05 green high",
                "5.85 green low",
            ],
            bench.Run(6, Verdict.Spray).News());
    }

    [Fact]
    public void SlowDown_IsYellowHalfOnHalfOff()
    {
        using LightBench bench = new();
        bench.News();
        Assert.Equal(
            [
                "0.05 red low", "0.05 yellow high",
                "0.55 yellow low", "1.05 yellow high",
                "1.55 yellow low", "2.05 yellow high",
                "2.55 yellow low",
            ],
            bench.Run(3, Verdict.SlowDown).News());
    }

    [Theory]
    [InlineData(Verdict.Spray, Verdict.Wait, "3.05 green low|3.05 red high")]
    [InlineData(Verdict.Spray, Verdict.SlowDown, "3.05 green low|3.05 yellow high")]
    [InlineData(Verdict.SlowDown, Verdict.Wait, "3.05 red high")]
    [InlineData(Verdict.Wait, Verdict.Spray, "3.05 red low|3.05 green high")]
    public void Show_AnotherVerdict_SwitchesTheOldOffBeforeTheNewOn(Verdict from, Verdict to, string expected)
    {
        using LightBench bench = new();
        bench.Run(3, from);
        bench.News();
        Assert.Equal(expected.Split('|'), bench.Run(0.05, to).News());
        Assert.Equal(to, bench.Light.Health.Shown);
    }

    [Fact]
    public void Show_TheSameVerdictAgain_DoesNotDisturbTheRhythm()
    {
        using LightBench bench = new();
        bench.Run(0.05, Verdict.Spray).News();
        for (int step = 0; step < 34; step++)
        {
            bench.Run(0.05, Verdict.Spray);
        }

        Assert.Empty(bench.News());
        Assert.Equal(["1.85 green low"], bench.Run(0.1, Verdict.Spray).News());
    }

    [Fact]
    public void Show_AValueThatIsNoVerdict_IsWait()
    {
        using LightBench bench = new();
        bench.Run(2, Verdict.Spray).Run(0.05, (Verdict)7);
        Assert.Equal(Verdict.Wait, bench.Light.Health.Shown);
        Assert.Equal(PinValue.High, bench.Pins.Driven(LightBench.Red));
    }

    [Fact]
    public void ActiveLow_InvertsEveryPinFromTheStart()
    {
        using LightBench bench = new(options => options.ActiveLow = true);
        Assert.Equal(["0.00 green high", "0.00 yellow high", "0.00 red low"], bench.News());
        Assert.Equal(["0.05 red high", "0.05 green low", "1.85 green high"], bench.Run(2, Verdict.Spray).News());
        Assert.False(bench.GreenAndRedTogether(activeLow: true));
    }

    [Fact]
    public void Stop_ShowsWaitAndStaysThere()
    {
        using LightBench bench = new();
        bench.Run(1, Verdict.Spray);
        bench.News();
        bench.Light.Dispose();
        Assert.Equal(["1.00 green low", "1.00 red high"], bench.News());
        bench.Light.Dispose();
        Assert.Empty(bench.Run(10, Verdict.Spray).News());
        Assert.Equal(Verdict.Wait, bench.Light.Health.Shown);
    }

    [Fact]
    public void Silence_OfTheLoop_DropsToWaitAfterSixSeconds()
    {
        using LightBench bench = new();
        bench.Run(1).Light.Show(Verdict.Spray);
        bench.Run(6.0);
        Assert.Equal(Verdict.Spray, bench.Light.Health.Shown);
        Assert.False(bench.Light.Health.LoopSilent);
        bench.News();
        // The last verdict came at 1.00 s, and the green wink of 6.85 to 7.05 s ends in red.
        Assert.Equal(["7.05 red high"], bench.Run(30).News());
        Assert.True(bench.Light.Health.LoopSilent);
        Assert.Equal("Error: The loop has given no verdict for 6.1 s; the light shows wait", Assert.Single(bench.Logged));
    }

    [Fact]
    public void Silence_Ends_WithTheNextVerdict()
    {
        using LightBench bench = new();
        bench.Light.Show(Verdict.Spray);
        bench.Run(10);
        bench.News();
        Assert.Equal(["10.05 red low", "10.05 green high"], bench.Run(0.05, Verdict.Spray).News());
        Assert.False(bench.Light.Health.LoopSilent);
    }

    [Fact]
    public void Silence_WithinPatience_ChangesNothing()
    {
        using LightBench bench = new();
        for (int tick = 0; tick < 5; tick++)
        {
            bench.Run(0.05, Verdict.Spray).Run(5.9);
            Assert.Equal(Verdict.Spray, bench.Light.Health.Shown);
        }
    }

    [Fact]
    public void Buzzer_BeepsOnceForSlowDownAndThriceForWait()
    {
        using LightBench bench = new(options => options.BuzzerPin = LightBench.Buzzer);
        Assert.Equal(["0.00 green low", "0.00 yellow low", "0.00 buzzer low", "0.00 red high"], bench.News());
        bench.Run(1, Verdict.Spray);
        Assert.DoesNotContain(bench.News(), change => change.Contains("buzzer", StringComparison.Ordinal));
        Assert.Equal(["1.05 buzzer high", "1.25 buzzer low"], Beeps(bench.Run(2, Verdict.SlowDown)));
        Assert.Equal(
            ["3.05 buzzer high", "3.25 buzzer low", "3.45 buzzer high", "3.65 buzzer low", "3.85 buzzer high", "4.05 buzzer low"],
            Beeps(bench.Run(5, Verdict.Wait)));
        Assert.Empty(Beeps(bench.Run(5, Verdict.Spray)));
    }

    [Fact]
    public void Buzzer_Silent_NeverSounds()
    {
        using LightBench bench = new(options => (options.BuzzerPin, options.BuzzerSilent) = (LightBench.Buzzer, true));
        bench.Run(1, Verdict.Spray).News();
        Assert.Empty(Beeps(bench.Run(5, Verdict.Wait)));
    }

    [Fact]
    public void Buzzer_BetterVerdictWhileBeeping_EndsTheBeep()
    {
        using LightBench bench = new(options => options.BuzzerPin = LightBench.Buzzer);
        bench.Run(1, Verdict.Spray).Run(0.1, Verdict.Wait).News();
        Assert.Equal(["1.15 buzzer low"], Beeps(bench.Run(2, Verdict.Spray)));
    }

    [Fact]
    public void Stop_WhileBeeping_EndsTheBeep()
    {
        using LightBench bench = new(options => options.BuzzerPin = LightBench.Buzzer);
        bench.Run(1, Verdict.Spray).Run(0.1, Verdict.Wait);
        bench.Light.Dispose();
        Assert.Equal(PinValue.Low, bench.Pins.Driven(LightBench.Buzzer));
    }

    [Fact]
    public void GreenAndRed_AreNeverOnTogether_OverAnyOrderOfVerdicts()
    {
        using LightBench bench = new();
        Random order = new(3);
        for (int change = 0; change < 200; change++)
        {
            bench.Run(0.05 * order.Next(1, 60), (Verdict)order.Next(3));
        }

        Assert.InRange(bench.Pins.Changes.Count, 200, 4095);
        Assert.False(bench.GreenAndRedTogether());
    }

    private static string[] Beeps(LightBench bench) =>
        [.. bench.News().Where(change => change.Contains("buzzer", StringComparison.Ordinal))];
}
