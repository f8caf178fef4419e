using BoothWatch.Jobs;

namespace BoothWatch.Reviews;

/// <summary>What to look at where the air does not explain how a coat came out. All of it is common practice, no source.</summary>
internal static class ReviewChecks
{
    private static readonly string[] Blush =
    [
        "water in the compressed air: drain the tank and the separator, blow the gun on a clean mirror and look for droplets",
        "the thinner: cheap or old thinner, a can that stood open, or one that does not suit this lacquer turns a film milky without any damp air",
        "contamination: silicone, wax, oil or a damp rag on the piece, a cup that held something else",
        "damp wood: check with a moisture meter; a piece just wiped with water or alcohol counts too",
        "a heavy hand: a pass laid twice, a run, or a pool is thicker than the film that was marked",
        "the place of the sensor: is it in the air that the piece stood in, and is it still right (salt-point check)",
        "cold lacquer: was the can or the gun colder than the booth",
    ];

    private static readonly string[] DrySpray =
    [
        "gun too far from the piece, or moved too fast",
        "too much air for the material, or a fan too wide",
        "a cup mixed too thick, or a thinner too fast for the day",
        "overspray that drifts back onto a coat already laid: the order of the passes, the draw of the exhaust",
    ];

    private static readonly string[] OrangePeel =
    [
        "material too thick, or too little thinner in the cup",
        "air pressure too low to break it up, or a nozzle too large",
        "gun too far off, or the coat laid on too thin to flow",
        "a cold piece or cold lacquer, which thickens before it levels",
    ];

    private static readonly string[] Soft =
    [
        "coats that followed too soon on each other: solvent from below has to come out as well",
        "more retarder in the cup than was marked",
        "oil, wax or an old finish below that the lacquer does not harden on",
        "a cold or closed room after the coat",
    ];

    private static readonly string[] Runs =
    [
        "too much in one pass, a gun too near or too slow",
        "material too thin",
        "a piece that stood upright while it was wet: laid level it flows and does not run",
    ];

    /// <summary>The list for an outcome and what the model says; empty where there is nothing to look for.</summary>
    public static IReadOnlyList<string> For(CoatOutcome? outcome, ReviewFinding finding) => (outcome, finding) switch
    {
        (CoatOutcome.Blushed, ReviewFinding.Holds) => Blush,
        (CoatOutcome.DrySpray, _) => DrySpray,
        (CoatOutcome.OrangePeel, _) => OrangePeel,
        (CoatOutcome.Soft, _) => Soft,
        (CoatOutcome.Runs, _) => Runs,
        _ => [],
    };
}
