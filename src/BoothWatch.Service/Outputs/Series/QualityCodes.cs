using BoothWatch.Readings;

namespace BoothWatch.Service.Outputs.Series;

/// <summary>The quality of a reading as one letter, in the order of <see cref="Quantities"/>; part of the file format, so letters and order stay.</summary>
internal static class QualityCodes
{
    /// <summary>Letter of a usable reading.</summary>
    public const char Good = 'G';

    /// <summary>Quantities in the order of the letters, with the column each one's value is in.</summary>
    public static readonly IReadOnlyList<(Quantity Quantity, string Column)> Quantities =
    [
        (Quantity.BoothTemperature, "booth_temperature_c"),
        (Quantity.BoothHumidity, "booth_humidity_pct"),
        (Quantity.IntakeTemperature, "intake_temperature_c"),
        (Quantity.IntakeHumidity, "intake_humidity_pct"),
        (Quantity.StationPressure, "station_pressure_pa"),
        (Quantity.PieceTemperature, "piece_temperature_c"),
        (Quantity.ExhaustProof, "exhaust_proof"),
        (Quantity.FilterPressureDrop, "filter_pressure_drop_pa"),
    ];

    /// <summary>One letter a quantity, for example <c>GG--GG..</c>.</summary>
    public static string Of(BoothSnapshot snapshot) =>
        string.Create(Quantities.Count, snapshot, static (letters, snapshot) =>
        {
            for (int i = 0; i < letters.Length; i++)
            {
                letters[i] = Letter(snapshot[Quantities[i].Quantity].Quality);
            }
        });

    /// <summary>The letter of a quality; <c>?</c> for one this version has no letter for.</summary>
    public static char Letter(ReadingQuality quality) => quality switch
    {
        ReadingQuality.Missing => '-',
        ReadingQuality.Good => Good,
        ReadingQuality.NoReading => 'N',
        ReadingQuality.Stale => 'S',
        ReadingQuality.Frozen => 'F',
        ReadingQuality.OutOfRange => 'O',
        ReadingQuality.Saturated => 'W',
        ReadingQuality.Disagreeing => 'D',
        ReadingQuality.Condensing => 'C',
        ReadingQuality.BeingChecked => 'K',
        ReadingQuality.FailedCheck => 'X',
        _ => '?',
    };

    /// <summary>The quantity whose value stands in a column; null for a column of something else.</summary>
    public static Quantity? QuantityOf(string column) => PlaceOf(column) is { } place ? Quantities[place].Quantity : null;

    /// <summary>False for the column of a quantity whose letter says that its value is not good.</summary>
    public static bool IsGood(string quality, string column) =>
        PlaceOf(column) is not { } place || (place < quality.Length && quality[place] == Good);

    /// <summary>SQL for a quantity's value where it was good, else null.</summary>
    public static string GoodValueSql(string column) => PlaceOf(column) is { } place
        ? $"CASE WHEN substr(quality, {place + 1}, 1) = '{Good}' THEN {column} END"
        : column;

    private static int? PlaceOf(string column)
    {
        for (int i = 0; i < Quantities.Count; i++)
        {
            if (Quantities[i].Column == column)
            {
                return i;
            }
        }

        return null;
    }
}
