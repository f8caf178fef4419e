using System.Reflection;
using System.Text;

namespace BoothWatch.Service.Page;

/// <summary>The files of the page, carried inside the program.</summary>
public static class PageAssets
{
    /// <summary>The chart library as the build put it in; see ChartLibrary/ChartLibrary.targets.</summary>
    private const string ChartLibrary = "chart/uplot.js";

    /// <summary>The files that are served as they are, with their media type.</summary>
    public static IReadOnlyDictionary<string, string> MediaTypes { get; } = new Dictionary<string, string>
    {
        ["page.css"] = "text/css; charset=utf-8",
        ["chart.css"] = "text/css; charset=utf-8",
        ["theme.js"] = "text/javascript; charset=utf-8",
        ["page.js"] = "text/javascript; charset=utf-8",
        ["jobs-tile.js"] = "text/javascript; charset=utf-8",
        ["chart.js"] = "text/javascript; charset=utf-8",
        ["chart-drawing.js"] = "text/javascript; charset=utf-8",
        ["chart-touch.js"] = "text/javascript; charset=utf-8",
        ["icon-spray.svg"] = "image/svg+xml",
        ["icon-slow-down.svg"] = "image/svg+xml",
        ["icon-wait.svg"] = "image/svg+xml",
    };

    /// <summary>The files of the chart library with their media type; none where the build had no npm, and the page then shows the drawing of the server.</summary>
    public static IReadOnlyDictionary<string, string> ChartLibraryMediaTypes { get; } = HasChartLibrary
        ? new Dictionary<string, string>
        {
            [ChartLibrary] = "text/javascript; charset=utf-8",
            ["chart/uplot.css"] = "text/css; charset=utf-8",
            ["chart/uplot-licence.txt"] = "text/plain; charset=utf-8",
        }
        : [];

    /// <summary>True when the build put the chart library into the program.</summary>
    public static bool HasChartLibrary => Assembly.GetExecutingAssembly().GetManifestResourceInfo(ChartLibrary) is not null;

    /// <summary>Reads a file.</summary>
    /// <param name="name">Its folder and name in the program, for example <c>page/page.css</c>.</param>
    /// <exception cref="InvalidOperationException">The build left the file out.</exception>
    public static byte[] Read(string name)
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The page's file {name} is missing from the program.");
        byte[] bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }

    /// <summary>Reads a text file (UTF-8).</summary>
    public static string ReadText(string name) => Encoding.UTF8.GetString(Read(name));
}
