using BoothWatch.Film;
using BoothWatch.Jobs;

namespace BoothWatch.Tests.Jobs;

/// <summary>Jobs of the Harbour Lane shop, for tests.</summary>
internal static class Sample
{
    public static readonly DateTimeOffset Day = new(2026, 6, 3, 8, 0, 0, TimeSpan.Zero);

    /// <summary>The round that touch-ups commonly take: flash, clear, flash, four hours, nothing coarser than 800, seven days (common practice, no source).</summary>
    public static readonly Schedule TouchUp = new()
    {
        Id = "touch-up",
        Description = "touch-up",
        Basis = "common practice, no source",
        Round = [new(CoatKind.Flash, TimeSpan.FromMinutes(10)), new(CoatKind.Clear, TimeSpan.FromMinutes(10)), new(CoatKind.Flash, TimeSpan.FromHours(4))],
        Rounds = 2,
        SandNoCoarserThanGrit = 800,
        SoftFor = TimeSpan.FromHours(24),
        HangBeforeBuffing = TimeSpan.FromDays(7),
    };

    public static CoatDetails Coat(int minute, CoatKind kind = CoatKind.Clear, double retarderPct = 0, int? stopMinute = null) => new()
    {
        Kind = kind,
        Mix = new CoatMix("lacquer", 1, "thinner", 1, "retarder", retarderPct),
        WetFilmUm = 75,
        Substrate = "wood",
        AirSpeedMPerS = 0.5,
        Start = Day.AddMinutes(minute),
        Stop = stopMinute is { } stop ? Day.AddMinutes(stop) : null,
    };

    public static Job Job(params JobChange[] changes) => BoothWatch.Jobs.Job.From(Entries(changes));

    public static IEnumerable<JobEntry> Entries(params JobChange[] changes) =>
        changes.Prepend(new JobStarted(new JobDetails("side table", "satin", "touch-up")))
            .Select((change, at) => new JobEntry(at + 1, 1, Day.AddMinutes(at), "page", change));
}
