using BoothWatch.Film;
using BoothWatch.Jobs;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Tests.Jobs;

/// <summary>Jobs of the Harbour Lane shop, for tests.</summary>
internal static class TestJob
{
    public static readonly DateTimeOffset Day = new(2026, 6, 3, 8, 0, 0, TimeSpan.Zero);

    public static readonly JobDetails Details = new("side table", "satin", "touch-up");

    public static CoatDetails Coat(int start, int? stop = null, double retarderPct = 0) => new()
    {
        Kind = CoatKind.Clear,
        Mix = new CoatMix("nitrocellulose lacquer", 1, "ordinary thinner", 0, "2-butoxyethanol", retarderPct),
        WetFilmUm = 75,
        Substrate = "wood",
        AirSpeedMPerS = 0.5,
        Start = Day.AddMinutes(start),
        Stop = stop is { } minute ? Day.AddMinutes(minute) : null,
    };

    public static JobCoat CoatAt(DateTimeOffset start, DateTimeOffset stop)
    {
        CoatDetails details = Coat(0) with { Start = start, Stop = stop };
        return new JobCoat { Id = 1, JobId = 1, MarkedBy = "page", Details = details, Original = details, Moment = null };
    }

    public static CoatMoment Moment(double marginC) => new()
    {
        Time = Day,
        AirTemperatureC = 21.5,
        RelativeHumidityPct = 61,
        PressurePa = 101325,
        DewPointC = 13.7,
        PieceTemperatureC = 20.5,
        Verdict = Verdict.SlowDown,
        BlushMarginC = marginC,
        MarginUncertaintyC = 0.9,
        RecommendedRetarderPct = 6,
    };
}
