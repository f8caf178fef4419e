using System.Collections.Immutable;
using BoothWatch.Air;
using BoothWatch.Film;
using BoothWatch.Readings;
using BoothWatch.Warming;
using FsCheck.Xunit;
using Xunit.Abstractions;

namespace BoothWatch.Tests.Warming;

public class WarmingTrailTests(ITestOutputHelper output)
{
    private const double TimeConstantS = 1800;

    /// <summary>Newton's law itself, T = 21 - 12 exp(-t/1800): from 8 minutes of trail the time to 16 °C, 1800 ln(12/5) = 1576 s after the start.</summary>
    [Fact]
    public void Until_OfAnExactDecay_IsThatOfNewtonsLaw()
    {
        WarmingTrail trail = new();
        Feed(trail, 0, 480, Newton, _ => 21);
        WarmingTime time = trail.Fit()!.Until(21, 16, 0)!.Value;
        double truthS = (TimeConstantS * Math.Log(12.0 / 5)) - 480;
        Assert.InRange(truthS, time.LeastS, time.MostS!.Value);
        Assert.Equal(truthS, time.LeftS, 0.15 * truthS);
    }

    /// <summary>The constant is found again under the noise of the part, for many time constants, and its range holds the truth as often as it says.</summary>
    [Theory]
    [InlineData(600, 0.1)]
    [InlineData(900, 0.1)]
    [InlineData(1800, 0.1)]
    [InlineData(3600, 0.1)]
    [InlineData(1800, 0.25)]
    public void Until_UnderNoise_HoldsTheTruthInItsRange(double timeConstantS, double noiseC)
    {
        Random random = new(7);
        (int hit, int said, double worst) = (0, 0, 0);
        for (int run = 0; run < 100; run++)
        {
            WarmingTrail trail = new();
            Feed(trail, 0, 420, t => 21 - (12 * Math.Exp(-t / timeConstantS)) + (noiseC * Gauss(random)), _ => 21 + (0.02 * Gauss(random)));
            double truthS = (timeConstantS * Math.Log(12.0 / 5)) - 420;
            if (trail.Fit()?.Until(21, 16, 0) is not { } time)
            {
                continue;
            }

            said++;
            worst = Math.Max(worst, Math.Abs(time.LeftS - truthS) / truthS);
            hit += truthS >= time.LeastS && truthS <= (time.MostS ?? double.PositiveInfinity) ? 1 : 0;
        }

        output.WriteLine($"τ {timeConstantS} s, noise {noiseC} °C: said {said}, in range {hit}, worst {worst:P0}");
        Assert.InRange(said, 85, 100);
        Assert.InRange(hit, 0.9 * said, said);
    }

    /// <summary>The air may change meanwhile: it warms by 3 °C over the trail, and the constant is found all the same.</summary>
    [Fact]
    public void Rate_InAirThatWarms_IsThatOfThePiece()
    {
        double pieceC = 8;
        double Step(double t)
        {
            pieceC += (18 + (t * 3 / 600) - pieceC) / TimeConstantS;
            return pieceC;
        }

        WarmingTrail trail = new();
        Feed(trail, 0, 600, Step, t => 18 + (t * 3 / 600));
        WarmingTime time = trail.Fit()!.Until(21, 18, 0)!.Value;
        double truthS = TimeConstantS * Math.Log((21 - pieceC) / 3);
        Assert.InRange(truthS, time.LeastS, time.MostS!.Value);
        Assert.Equal(truthS, time.LeftS, 0.2 * truthS);
    }

    /// <summary>Bodies after the conduction model, seen from their first minutes on: the truth lies in the range that is said, whether thickness and
    /// material are known, not known, or those of a 4 mm panel by mistake.</summary>
    [Theory]
    [InlineData("wood", 0.02, 0.15, 770_000)]
    [InlineData("wood", 0.03, 0.15, 770_000)]
    [InlineData("wood", 0.045, 0.15, 770_000)]
    [InlineData("fibreboard", 0.018, 0.14, 1.2e6)]
    [InlineData("steel plate", 0.01, 50, 3.7e6)]
    public void Until_OfABodyWithAMiddle_HoldsTheTruthInItsRange(string id, double thicknessM, double conductivity, double capacity)
    {
        Substrate body = new(id, thicknessM, conductivity, capacity);
        Random random = new(3);
        double truthS = Course(body, out Func<double, double> surface);
        MoistAir air = MoistAir.FromRelativeHumidity(21, 45, 101_325);
        BodyGuess?[] guesses = [null, BodyGuess.Of(body, air, 0.5), BodyGuess.Of(body with { ThicknessM = 0.004 }, air, 0.5)];
        int said = 0;
        foreach (double untilS in new double[] { 240, 420, 600, 900, 1200, 1800 }.Where(s => s < truthS - 60))
        {
            WarmingTrail trail = new();
            Feed(trail, 0, untilS, t => surface(t) + (0.1 * Gauss(random)), _ => 21);
            double leftS = truthS - untilS;
            string line = $"{id} {thicknessM * 1000} mm after {untilS / 60} min: truth {leftS / 60:0.0} min";
            foreach (BodyGuess? guess in guesses)
            {
                if (trail.Fit()?.Until(21, 16, 0.2, guess) is { } time)
                {
                    said++;
                    line += $", {(guess is null ? "without a guess" : $"guess {guess.Value.ConstantS / 60:0} min")} {time.LeftS / 60:0.0} ({time.LeastS / 60:0.0} to {time.MostS / 60:0.0})";
                    Assert.True(leftS >= time.LeastS && leftS <= (time.MostS ?? double.PositiveInfinity), line);
                }
            }

            output.WriteLine(line);
        }

        Assert.True(said > 3);
    }

    [Fact]
    public void Fit_OfAShortTrail_SaysNothing()
    {
        WarmingTrail trail = new();
        Feed(trail, 0, 170, Newton, _ => 21);
        Assert.Null(trail.Fit());
    }

    [Fact]
    public void Fit_OfATrailThatEnded_SaysNothing()
    {
        WarmingTrail trail = new();
        Feed(trail, 0, 600, Newton, _ => 21);
        trail.Take(Snapshot(null, 21), TimeSpan.FromSeconds(800));
        Assert.Null(trail.Fit());
    }

    [Fact]
    public void Fit_OfAPieceThatStaysCold_IsStill()
    {
        Random random = new(1);
        WarmingTrail trail = new();
        Feed(trail, 0, 900, _ => 9 + (0.1 * Gauss(random)), _ => 21);
        Assert.True(trail.Fit()!.Until(21, 16, 0.2)!.Value.LeastS > WarmingFit.StillS);
    }

    [Fact]
    public void Fit_OfNoiseAlone_NeverWarms()
    {
        Random random = new(5);
        int warms = 0;
        for (int run = 0; run < 200; run++)
        {
            WarmingTrail trail = new();
            Feed(trail, 0, 400, _ => 9 + (0.3 * Gauss(random)), _ => 21);
            warms += trail.Fit()?.Until(21, 16, 0.2) is not null ? 1 : 0;
        }

        Assert.Equal(0, warms);
    }

    [Fact]
    public void Hand_InFrontOfTheSensor_IsSetAsideAndLeavesTheTrail()
    {
        WarmingTrail trail = new();
        Feed(trail, 0, 300, Newton, _ => 21);
        Feed(trail, 301, 315, _ => 31, _ => 21);
        Assert.True(trail.IsUnsettled);
        Assert.Null(trail.Fit());
        Feed(trail, 316, 420, Newton, _ => 21);
        Assert.False(trail.IsUnsettled);
        Assert.NotNull(trail.Fit()!.Until(21, 16, 0.2));
        Assert.DoesNotContain(trail.Points, point => point.PieceC > 25);
    }

    [Fact]
    public void Piece_Swapped_BeginsATrailOfItsOwn()
    {
        WarmingTrail trail = new();
        Feed(trail, 0, 600, Newton, _ => 21);
        Feed(trail, 601, 640, t => 4 + ((t - 600) / 200), _ => 21);
        Assert.False(trail.IsUnsettled);
        Assert.All(trail.Points, point => Assert.InRange(point.PieceC, 3, 5));
        Assert.Null(trail.Fit());
        Assert.Null(new WarmingTrail().SinceBelowS(16));
    }

    [Fact]
    public void Value_TypedOnce_IsOnePoint()
    {
        WarmingTrail trail = new();
        for (int t = 0; t < 900; t++)
        {
            Reading typed = new(Quantity.PieceTemperature, "piece", 9, 0.8, TimeSpan.FromSeconds(t), ReadingQuality.Good, null);
            trail.Take(Snapshot(typed, 21), TimeSpan.FromSeconds(t + 0.001 * (t % 3)));
        }

        Assert.Single(trail.Points);
        Assert.Null(trail.Fit());
    }

    [Theory]
    [InlineData(600)]
    [InlineData(10)]
    public void Piece_SwappedAndTypedIn_BeginsATrailOfItsOwn(int secondAtS)
    {
        WarmingTrail trail = new();
        for (int t = 0; t < 660; t++)
        {
            int sinceS = t < secondAtS ? t : t - secondAtS;
            Reading typed = new(Quantity.PieceTemperature, "piece", t < secondAtS ? 16 : 5, 0.8, TimeSpan.FromSeconds(sinceS), ReadingQuality.Good, null);
            trail.Take(Snapshot(typed, 21), TimeSpan.FromSeconds(t));
        }

        Assert.False(trail.IsUnsettled);
        Assert.Equal(5, Assert.Single(trail.Points).PieceC);
    }

    [Fact]
    public void SinceBelow_AfterWarming_CountsFromTheLastColdPoint()
    {
        WarmingTrail trail = new();
        Feed(trail, 0, 300, t => t <= 200 ? 15.9 : 16.1, _ => 21);
        Assert.Equal(100, trail.SinceBelowS(16)!.Value, 1.0);
        Assert.Null(trail.SinceBelowS(10));
    }

    /// <summary>Whatever is measured: no exception, the least is never above the most, and no time is negative or no number.</summary>
    [Property(MaxTest = 300)]
    public bool AnyTrail_GivesAnOrderedTimeOrNone(double[] pieces, byte air, byte target)
    {
        WarmingTrail trail = new();
        double airC = 10 + (air / 10.0);
        double targetC = airC - 0.1 - (target / 20.0);
        for (int i = 0; i < pieces.Length * 3; i++)
        {
            double pieceC = Math.IEEERemainder(double.IsFinite(pieces[i / 3]) ? pieces[i / 3] : 0, 40);
            Feed(trail, i * 30, i * 30, _ => pieceC, _ => airC);
        }

        return trail.Fit()?.Until(airC, targetC, 0.3) is not { } time
            || time.LeastS >= 0 && time.LeastS <= time.LeftS && (time.MostS is not { } most || time.LeftS <= most);
    }

    private static double Newton(double t) => 21 - (12 * Math.Exp(-t / TimeConstantS));

    private static double Course(Substrate body, out Func<double, double> surface)
    {
        MoistAir air = MoistAir.FromRelativeHumidity(21, 45, 101_325);
        var run = SlabRun.In(body, air, 0.5, SlabWarming.LengthM, 6);
        List<(double S, double C)> course = [(0, 6)];
        while (run.TimeS < 4 * 3600)
        {
            run.Step();
            course.Add((run.TimeS, run.SurfaceC));
        }

        double At(double t)
        {
            int i = Math.Clamp(course.FindIndex(p => p.S >= t), 1, course.Count - 1);
            (double s0, double c0) = course[i - 1];
            (double s1, double c1) = course[i];
            return c0 + ((c1 - c0) * (t - s0) / (s1 - s0));
        }

        surface = At;
        return SlabWarming.Surface(body, air, 0.5, SlabWarming.LengthM, 6, 16)!.Value.AfterS;
    }

    private static void Feed(WarmingTrail trail, double fromS, double toS, Func<double, double> piece, Func<double, double> air)
    {
        for (double t = fromS; t <= toS; t++)
        {
            Reading reading = new(Quantity.PieceTemperature, "piece", piece(t), 0.3, TimeSpan.Zero, ReadingQuality.Good, null);
            trail.Take(Snapshot(reading, air(t)), TimeSpan.FromSeconds(t));
        }
    }

    private static BoothSnapshot Snapshot(Reading? piece, double airC)
    {
        Reading air = new(Quantity.BoothTemperature, "boothAir", airC, 0.1, TimeSpan.Zero, ReadingQuality.Good, null);
        return new BoothSnapshot(
            DateTimeOffset.UnixEpoch,
            true,
            new[] { piece ?? Reading.Missing(Quantity.PieceTemperature), air }.ToImmutableDictionary(reading => reading.Quantity));
    }

    private static double Gauss(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
