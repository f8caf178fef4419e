using BoothWatch.Checks;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace BoothWatch.Tests.Checks;

public class SettlingTests
{
    private static readonly SettlingLimits Limits = new(TimeSpan.FromHours(2), TimeSpan.FromMinutes(30), 0.3, 0.3, TimeSpan.FromMinutes(10));

    [Fact]
    public void At_SteadyForTheWholeTime_IsSettledThenAndNotBefore()
    {
        Settling settling = Run(until: 119, _ => 75.3, _ => 24);
        Assert.Equal("steady so far, 60 s to go", settling.At(TimeSpan.FromMinutes(119)).NotYet?.ToString());

        settling.Take(75.3, 24, TimeSpan.FromMinutes(120));
        SettlingState state = settling.At(TimeSpan.FromMinutes(120));
        Assert.True(state.IsSettled);
        Assert.Equal(75.3, state.HumidityPct!.Value, 9);
        Assert.Equal(24, state.TemperatureC!.Value, 9);
    }

    // A jar of a time constant of 20 min, from 50 to 75.3 %: it creeps 0.3 % in half an hour until 25.3 exp(-t/20)(exp(1.5) - 1) = 0.3, at t = 113.7 min.
    [Theory]
    [InlineData(112, false)]
    [InlineData(117, true)]
    public void At_AnExponentialCreep_SettlesWhenItsFormulaSays(int minute, bool settled)
    {
        Settling settling = new(Limits with { AtLeast = TimeSpan.FromMinutes(40) }, TimeSpan.Zero);
        for (int second = 0; second <= minute * 60; second++)
        {
            settling.Take(75.3 - (25.3 * Math.Exp(-second / 1200.0)), 24, TimeSpan.FromSeconds(second));
        }

        SettlingState state = settling.At(TimeSpan.FromMinutes(minute));
        Assert.Equal(settled, state.IsSettled);
        if (!settled)
        {
            Assert.StartsWith("the humidity has moved by 0.3 % in the last 30 min, at most 0.3 % is wanted", state.NotYet!.ToString(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void At_ATemperatureThatSwings_SaysSo()
    {
        Settling settling = Run(until: 180, _ => 75.3, minute => 24 + (0.4 * Math.Sin(minute / 5.0)));
        Assert.Equal("the temperature has moved by 0.8 °C in the last 30 min, at most 0.3 °C is wanted over 30 min", settling.At(TimeSpan.FromMinutes(180)).NotYet?.ToString());
    }

    [Fact]
    public void At_NoiseOfThePart_IsNoMovement()
    {
        Random random = new(3);
        Settling settling = new(Limits, TimeSpan.Zero);
        for (int second = 0; second <= 2 * 3600; second++)
        {
            settling.Take(75.3 + (0.1 * (random.NextDouble() - 0.5)), 24 + (0.05 * (random.NextDouble() - 0.5)), TimeSpan.FromSeconds(second));
        }

        Assert.True(settling.At(TimeSpan.FromHours(2)).IsSettled);
    }

    [Fact]
    public void At_AfterAGap_BeginsAnew()
    {
        Settling settling = Run(until: 120, _ => 75.3, _ => 24);
        Assert.Equal("no reading", settling.At(TimeSpan.FromMinutes(131)).NotYet?.ToString());
        settling.Take(75.3, 24, TimeSpan.FromMinutes(132));
        Assert.Equal("steady so far, 30 min to go", settling.At(TimeSpan.FromMinutes(132)).NotYet?.ToString());
    }

    [Fact]
    public void At_WithoutAReading_IsNotSettled() => Assert.Equal("no reading", new Settling(Limits, TimeSpan.Zero).At(TimeSpan.FromHours(9)).NotYet?.ToString());

    [Fact]
    public void Take_FromBeforeTheBeginning_OrNoNumber_CountsForNothing()
    {
        Settling settling = new(Limits, TimeSpan.FromMinutes(10));
        settling.Take(50, 24, TimeSpan.FromMinutes(9));
        settling.Take(double.NaN, 24, TimeSpan.FromMinutes(11));
        settling.Take(75, double.PositiveInfinity, TimeSpan.FromMinutes(12));
        Assert.Null(settling.At(TimeSpan.FromMinutes(12)).HumidityPct);
    }

    [Fact]
    public void At_WithSparseReadings_SettlesAsWell()
    {
        Settling settling = new(Limits, TimeSpan.Zero);
        for (int minute = 0; minute <= 125; minute += 5)
        {
            settling.Take(75.3, 24, TimeSpan.FromMinutes(minute));
        }

        Assert.True(settling.At(TimeSpan.FromMinutes(126)).IsSettled);
    }

    // What is said to be settled was within the limits for the whole time, whatever came before it and however the readings are spaced.
    [Property(MaxTest = 300)]
    public Property At_AnyReadings_IsSettledOnlyWhereTheyStoodStill() => Prop.ForAll(
        Gen.Choose(0, 60).Select(tenth => tenth / 100.0).ListOf(90).ToArbitrary(),
        Gen.Choose(1, 8).ToArbitrary(),
        (steps, minutesApart) =>
        {
            SettlingLimits limits = Limits with { AtLeast = TimeSpan.FromMinutes(1) };
            Settling settling = new(limits, TimeSpan.Zero);
            List<(TimeSpan At, double Pct)> all = [];
            double pct = 60;
            for (int i = 0; i < steps.Count; i++)
            {
                pct += i < 40 ? steps[i] : steps[i] / 20;
                TimeSpan at = TimeSpan.FromMinutes(i * minutesApart);
                all.Add((at, pct));
                settling.Take(pct, 24, at);
                double[] window = [.. all.Where(reading => reading.At >= at - limits.Over).Select(reading => reading.Pct)];
                SettlingState state = settling.At(at);

                // Averages over a slice of a minute: only one reading falls into each here.
                if (state.IsSettled && (at < limits.Over || window[^1] - window[0] > limits.HumidityPct + 1e-9))
                {
                    return false;
                }
            }

            return true;
        });

    private static Settling Run(int until, Func<int, double> humidityPct, Func<int, double> temperatureC)
    {
        Settling settling = new(Limits, TimeSpan.Zero);
        for (int minute = 0; minute <= until; minute++)
        {
            settling.Take(humidityPct(minute), temperatureC(minute), TimeSpan.FromMinutes(minute));
        }

        return settling;
    }
}
