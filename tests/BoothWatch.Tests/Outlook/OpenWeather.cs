using System.Globalization;
using BoothWatch.Outlook;

namespace BoothWatch.Tests.Outlook;

/// <summary>
/// Open weather data as the record of a booth that is as warm and as damp as outdoors. Known by their header: nycflights13 data-raw/weather.csv (CC0;
/// hourly, °F, three airports), and the weather stations of the City of Zurich (open data, sid_wapo_wetterstationen, CC0; every 10 minutes, °C).
/// </summary>
internal static class OpenWeather
{
    public static IReadOnlyList<(string Place, AirPast Past)> Read(string file)
    {
        string[] lines = [.. File.ReadLines(file).Where(line => !line.StartsWith('#'))];
        string[] header = lines[0].Split(',');
        IEnumerable<(string Place, DateTime Time, OutlookAir Air)> rows = lines.Skip(1).Select(line => line.Split(',')).Select(cells => header[0] == "origin" ? Nyc(cells) : Zurich(cells)).OfType<(string, DateTime, OutlookAir)>();
        return [.. rows.GroupBy(row => row.Place).Select(place => (place.Key, new AirPast(place.GroupBy(row => DateOnly.FromDateTime(row.Time)).Select(DayOf))))];
    }

    private static AirDay DayOf(IGrouping<DateOnly, (string Place, DateTime Time, OutlookAir Air)> rows)
    {
        AirDay day = new(rows.Key);
        foreach ((string _, DateTime time, OutlookAir air) in rows)
        {
            day[AirDay.SlotOf(time.TimeOfDay)] = air;
        }

        return day;
    }

    // origin,year,month,day,hour,temp,dewp,...
    private static (string, DateTime, OutlookAir)? Nyc(string[] cells) =>
        Number(cells[5]) is { } temperatureF && Number(cells[6]) is { } dewPointF
            ? (cells[0], new DateTime(Whole(cells[1]), Whole(cells[2]), Whole(cells[3]), Whole(cells[4]), 0, 0), new OutlookAir((temperatureF - 32) / 1.8, (dewPointF - 32) / 1.8))
            : null;

    // timestamp_cet,air_temperature,...,dew_point
    private static (string, DateTime, OutlookAir)? Zurich(string[] cells) =>
        Number(cells[1]) is { } temperatureC && Number(cells[^1]) is { } dewPointC
            ? ("Zurich", DateTime.Parse(cells[0], CultureInfo.InvariantCulture), new OutlookAir(temperatureC, dewPointC))
            : null;

    private static double? Number(string text) => double.TryParse(text, CultureInfo.InvariantCulture, out double number) ? number : null;

    private static int Whole(string text) => int.Parse(text, CultureInfo.InvariantCulture);
}
