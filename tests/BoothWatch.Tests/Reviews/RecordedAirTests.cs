using BoothWatch.Film;
using BoothWatch.Reviews;

namespace BoothWatch.Tests.Reviews;

public class RecordedAirTests
{
    private static readonly DateTimeOffset Noon = SampleReview.Noon;

    [Fact]
    public void Course_OfAirThatHardlyMoves_IsOneStep()
    {
        AirCourse course = Of(0, 30, minute => 12 + (0.04 * Math.Sin(minute))).CourseFrom(Noon, TimeSpan.FromHours(6))!;
        Assert.Equal(12, Assert.Single(course.Steps).DewPointC, 0.02);
    }

    [Fact]
    public void Course_OfAirThatRises_FollowsItWithinATenth()
    {
        AirCourse course = Of(0, 120, minute => 12 + (0.05 * minute)).CourseFrom(Noon.AddSeconds(30), TimeSpan.FromHours(6))!;
        for (int minute = 0; minute < 119; minute++)
        {
            Assert.Equal(12 + (0.05 * (minute + 1)), course.At((minute * 60) + 31).DewPointC, RecordedAir.SameWithinC + 1e-9);
        }
    }

    [Fact]
    public void Course_BeginsWithTheAirOfTheLandingAndEndsAtAGap()
    {
        RecordedAir air = new([.. Of(0, 5, _ => 10).Moments, .. Of(9, 12, _ => 14).Moments, .. Of(30, 40, _ => 18).Moments]);
        AirCourse course = air.CourseFrom(Noon.AddMinutes(2.5), TimeSpan.FromHours(6))!;
        Assert.Equal([0.0, 6.5 * 60], course.Steps.Select(step => step.FromS));
        Assert.Equal([10.0, 14], course.Steps.Select(step => step.DewPointC));
        Assert.Equal(Noon.AddMinutes(12), air.KnownUntil(Noon.AddMinutes(2.5)));
    }

    [Theory]
    [InlineData(-2, false)]
    [InlineData(-0.5, true)]
    [InlineData(0, true)]
    [InlineData(9.9, true)]
    [InlineData(14, true)]
    [InlineData(16, false)]
    public void At_NearTheRecord_IsKnownAndFurtherOffNot(double minutes, bool known) =>
        Assert.Equal(known, Of(0, 10, _ => 12).At(Noon.AddMinutes(minutes)) is not null);

    [Fact]
    public void Limit_ByTheTangent_IsWithinATenthOfTheSearch()
    {
        CoatConditions coat = Film.TestCoat.Conditions(airC: 22);
        BlushLimit limit = new(coat, FilmParameters.Default);
        limit.At(22, 21);
        foreach ((double airC, double pieceC) in new[] { (23.5, 22.5), (20.5, 19.5), (23.5, 19.5), (20.5, 22.5) })
        {
            double searched = CriticalHumidity.Find(coat with { AirTemperatureC = airC, PieceTemperatureC = pieceC }).DewPointC;
            Assert.Equal(searched, limit.At(airC, pieceC)!.Value, 0.1);
        }
    }

    private static RecordedAir Of(int from, int to, Func<int, double> dewPointC) => new(Enumerable.Range(from, to - from)
        .Select(minute => new AirMoment(Noon.AddMinutes(minute), TimeSpan.FromMinutes(1), 22, dewPointC(minute), 21, null)));
}
