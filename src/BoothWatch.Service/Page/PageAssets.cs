using System.Reflection;
using System.Text;

namespace BoothWatch.Service.Page;

/// <summary>The files of the page, carried inside the program.</summary>
public static class PageAssets
{
    /// <summary>The chart library as the build put it in; see ChartLibrary/ChartLibrary.targets.</summary>
    private const string ChartLibrary = "chart/uplot.js";

    /// <summary>What a page says in the place of <c>{{head}}</c>: the lines that all of them have in common.</summary>
    private const string Head = "  {{head}}\n";

    /// <summary>The files of the glance, and those that every page has.</summary>
    public static IReadOnlyList<string> OfTheGlance { get; } =
    [
        "page.css", "chart.css", "theme.js", "page.js", "jobs-tile.js", "chart.js", "chart-drawing.js", "chart-touch.js", "shared.js",
        "icon-spray.svg", "icon-slow-down.svg", "icon-wait.svg",
    ];

    /// <summary>The files of the chart library; none where the build had no npm, and the page then shows the drawing of the server.</summary>
    public static IReadOnlyList<string> OfTheChartLibrary { get; } = HasChartLibrary ? ["uplot.js", "uplot.css", "uplot-licence.txt"] : [];

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

    /// <summary>Reads a page (UTF-8), with the lines in its head that all pages have in common; its <c>{{unit}}</c> is left to whoever asks.</summary>
    public static string ReadPage(string name) => ReadText(name).Replace(Head, ReadText("page/head.html"), StringComparison.Ordinal);

    /// <summary>Reads a text file (UTF-8).</summary>
    public static string ReadText(string name) => Encoding.UTF8.GetString(Read(name));
}
