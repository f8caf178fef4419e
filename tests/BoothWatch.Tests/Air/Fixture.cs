using System.Globalization;

namespace BoothWatch.Tests.Air;

/// <summary>Reads the CSV files of Fixtures; README.md there says where each comes from.</summary>
internal static class Fixture
{
    /// <summary>The numbers of the named columns, row by row.</summary>
    internal static IReadOnlyList<double[]> Numbers(string file, params string[] columns)
    {
        string[] lines = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "Air", "Fixtures", file));
        string[] header = lines[0].Split(',');
        int[] places = [.. columns.Select(column => Array.IndexOf(header, column))];
        Assert.DoesNotContain(-1, places);
        return [.. lines.Skip(1).Select(line => line.Split(',')).Select(cells =>
            places.Select(place => double.Parse(cells[place], CultureInfo.InvariantCulture)).ToArray())];
    }
}
