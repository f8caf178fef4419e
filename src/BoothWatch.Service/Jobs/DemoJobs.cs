using BoothWatch.Film;
using BoothWatch.Jobs;

namespace BoothWatch.Service.Jobs;

/// <summary>The invented past of the demo: which coats were sprayed when, with how much retarder, and what the shop said of them.</summary>
internal static class DemoJobs
{
    private const string FinishText = "clear lacquer, satin";

    /// <summary>The jobs, oldest first. Every day has the weather of the scripted shop: a dry morning, rain from about eleven.</summary>
    public static IReadOnlyList<DemoJob> All { get; } =
    [
        new("demo: walnut side table, top", FinishText, "a dry morning throughout", Finished: true,
        [
            new(20, new(8, 50, 0), CoatKind.Flash, 0, CoatOutcome.Clear, ""),
            new(20, new(9, 15, 0), CoatKind.Clear, 0, CoatOutcome.Clear, ""),
            new(20, new(9, 40, 0), CoatKind.Flash, 2, CoatOutcome.Clear, ""),
        ]),
        new("demo: cherry cabinet door", FinishText, "the second round met the rain", Finished: true,
        [
            new(13, new(9, 0, 0), CoatKind.Flash, 0, CoatOutcome.Clear, ""),
            new(13, new(9, 20, 0), CoatKind.Clear, 2, CoatOutcome.OrangePeel, "gun too far off"),
            new(13, new(15, 50, 0), CoatKind.Clear, 0, CoatOutcome.Blushed, "laid on heavy before closing; white haze within a minute") { WetFilmUm = 110 },
            new(12, new(9, 10, 0), CoatKind.Flash, 5, CoatOutcome.Clear, "haze gone after this flash coat"),
            new(12, new(9, 35, 0), CoatKind.Clear, 3, CoatOutcome.Clear, ""),
        ]),
        new("demo: spruce guitar top", "clear lacquer, gloss", "much retarder in the afternoon, and it held", Finished: true,
        [
            new(6, new(9, 5, 0), CoatKind.Sealer, 0, CoatOutcome.Clear, ""),
            new(6, new(11, 10, 0), CoatKind.Clear, 8, CoatOutcome.Clear, ""),
            new(5, new(9, 30, 0), CoatKind.Clear, 12, CoatOutcome.Soft, "still took a thumbnail the next day"),
        ]),
        new("demo: oak stool, legs", FinishText, "still running: see its timers", Finished: false,
        [
            new(1, new(9, 0, 0), CoatKind.Flash, 0, CoatOutcome.Clear, ""),
            new(1, new(9, 20, 0), CoatKind.Clear, 2, null, ""),
            new(1, new(9, 45, 0), CoatKind.Flash, 2, null, ""),
        ]),
    ];
}
