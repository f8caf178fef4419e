using BoothWatch.Service.Outputs.Influx;

namespace BoothWatch.Benchmarks.Scaling;

/// <summary>Rows with every column of the journal filled, as a booth with all its sensors ships them.</summary>
internal static class SimulatedRow
{
    /// <summary>Fields of one row beside its number.</summary>
    public const int Fields = 17;

    /// <summary>A row that looks like no other.</summary>
    public static FeedRow Of(long id, DateTimeOffset time, int booth)
    {
        double wave = Math.Sin((id / 300.0) + booth);
        return new FeedRow(id, time,
        [
            new("clock_proven", 1L), new("verdict", 2L), new("quality", "GGGGGGGG"),
            new("booth_temperature_c", 21 + wave), new("booth_humidity_pct", 50 - (10 * wave)),
            new("intake_temperature_c", 15 + wave), new("intake_humidity_pct", 60 + wave),
            new("station_pressure_pa", 101_300 + (20 * wave)), new("piece_temperature_c", 20 + wave),
            new("exhaust_proof", 1.0), new("filter_pressure_drop_pa", 40 + wave),
            new("dew_point_c", 10 + wave), new("critical_humidity_pct", 78 + wave),
            new("blush_margin_c", 6 + wave), new("margin_uncertainty_c", 0.4 + (wave / 100)),
            new("lowest_film_temperature_c", 14 + wave), new("retarder_recommended_pct", 5.0),
        ]);
    }
}
