using BoothWatch.Jobs;

namespace BoothWatch.Records;

/// <summary>Says in plain sentences how far a record can be trusted, and what of it is missing.</summary>
public static class UncertaintyWords
{
    /// <summary>A margin within so many standard uncertainties of zero may be on either side of it (one-sided 95 % of the normal distribution).</summary>
    private const double Coverage = 1.65;

    /// <summary>A coat marked so much later than it was begun takes its air from the journal.</summary>
    private static readonly TimeSpan Late = TimeSpan.FromSeconds(90);

    /// <summary>The sentences.</summary>
    /// <param name="coats">The coats of the record.</param>
    /// <param name="sensors">Its sensors.</param>
    public static IReadOnlyList<string> Of(IReadOnlyList<RecordCoat> coats, IReadOnlyList<RecordSensor> sensors)
    {
        ArgumentNullException.ThrowIfNull(coats);
        ArgumentNullException.ThrowIfNull(sensors);
        List<string> words =
        [
            "The blush margin is the answer of a drying model for this coat's own mix, wet film and piece in the air at its start: by so much the dew point could have risen before the coat would blush. Nobody measured the film.",
            "What stands behind ± is one standard uncertainty of the margin, from the tolerances of the sensors and from the model: in about two cases of three the true value lies within it.",
        ];
        About(words, coats, coat => IsNearZero(coat.AtStart), "the margin is smaller than its uncertainty allows to call sure; the true one may lie on the other side of zero");
        About(words, coats, coat => coat.AtStart is null, "the air at the start is not on record, so there is no margin and no verdict");
        About(words, coats, coat => coat.AtStart is { BlushMarginC: null }, "there is no margin, because the piece was not measured or the model had no answer");
        About(words, coats, IsLate, "written down later than sprayed; the air is that of the journal, with usual tolerances of sensors and the pressure of the altitude");
        About(words, coats, coat => coat.Details.Stop is null, $"no end was marked; {RecordSpan.UnmarkedSpray.TotalMinutes:0} minutes of spraying are taken");
        About(words, coats, coat => coat.WhileSprayed is null, "the journal has no air for the time of spraying");
        words.Add("Figures while spraying are those of whole minutes, from the one in which the coat began to the one in which it ended.");
        words.Add("The air was measured where the sensors hang, not at the gun and not in the film; a draught or a cold spot on the piece does not show.");
        words.Add(Checks(sensors));
        words.Add("Water or oil in compressed air, the age of thinner and lacquer, and the state of the surface are not measured and not part of this record.");
        return words;
    }

    private static bool IsNearZero(CoatMoment? moment) =>
        moment is { BlushMarginC: { } margin, MarginUncertaintyC: { } uncertainty } && Math.Abs(margin) < Coverage * uncertainty;

    private static bool IsLate(RecordCoat coat)
    {
        DateTimeOffset entered = coat.Corrections.LastOrDefault(correction => correction.Details.Start != coat.Original!.Start)?.At ?? coat.MarkedAt;
        return entered - coat.Details.Start > Late;
    }

    private static string Checks(IReadOnlyList<RecordSensor> sensors)
    {
        string[] without = [.. sensors.Where(sensor => sensor.LastCheck is null).Select(sensor => sensor.Name)];
        return sensors.Count == 0 ? "Which sensors measured is not known."
            : without.Length == sensors.Count ? "No check of a sensor is on record: readings are as good as their makers' tolerances, if nothing has drifted."
            : without.Length > 0 ? $"No check is on record of {string.Join(", ", without)}."
            : "Every sensor has a check on record.";
    }

    private static void About(List<string> words, IReadOnlyList<RecordCoat> coats, Func<RecordCoat, bool> holds, string finding)
    {
        int[] places = [.. coats.Where(holds).Select(coat => coat.Place)];
        if (places.Length > 0)
        {
            words.Add($"{(places.Length == 1 ? "Coat" : "Coats")} {string.Join(", ", places)}: {finding}.");
        }
    }
}
