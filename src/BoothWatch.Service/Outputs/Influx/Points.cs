using InfluxDB.Client.Api.Domain;
using InfluxDB.Client.Writes;

namespace BoothWatch.Service.Outputs.Influx;

/// <summary>
/// Turns rows into points. The same row always gives the same measurement, tags and timestamp, so that writing it again
/// replaces it and changes nothing.
/// </summary>
/// <remarks>Line protocol: https://docs.influxdata.com/influxdb/v2/reference/syntax/line-protocol/</remarks>
/// <param name="tags">Tags of every point.</param>
public sealed class Points(BoothTags tags)
{
    /// <summary>Field with the number of the row, by which a gap can be found.</summary>
    public const string RowField = "row_id";

    /// <summary>A row as one line of line protocol, timestamp in milliseconds.</summary>
    public string Line(string measurement, FeedRow row)
    {
        PointData point = PointData.Measurement(measurement)
            .Tag("shop", Tag(tags.Shop))
            .Tag("booth", Tag(tags.Booth))
            .Tag("origin", tags.IsDemo ? "demo" : "measured")
            .Field(RowField, row.Id)
            .Timestamp(row.Time.ToUnixTimeMilliseconds(), WritePrecision.Ms);
        foreach ((string name, object value) in row.Values)
        {
            point = value switch
            {
                long number => point.Field(name, number),
                double number => point.Field(name, number),
                string text => point.Field(name, text),
                _ => throw new ArgumentException($"{name} is a {value.GetType().Name}; a field is a number or text."),
            };
        }

        return point.ToLineProtocol();
    }

    // Line protocol cannot write a tag that ends in a backslash: it would escape what follows.
    private static string Tag(string name) => name.Replace('\\', '/');
}
