using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Page;

/// <summary>
/// Writes the first HTML. By itself it says wait, for without its script it cannot grow old in time; the state at sending lies in it as data,
/// for the script to show at once.
/// </summary>
public sealed partial class PageHtml
{
    private readonly string[] _parts;
    private readonly double _chartHours;

    /// <summary>Takes the template apart at its placeholders: <c>{{text}}</c> is escaped, <c>{{{markup}}}</c> is made here.</summary>
    public PageHtml(IOptions<PageOptions> options)
    {
        ArgumentNullException.ThrowIfNull(options);
        _chartHours = options.Value.ChartHours;
        _parts = Placeholder().Split(PageAssets.ReadPage("page/page.html"));
    }

    /// <summary>The page for one state.</summary>
    /// <param name="view">The state in words.</param>
    /// <param name="sources">What stands beside it.</param>
    /// <param name="text">How to write temperatures.</param>
    /// <param name="time">The clock and the shop's time zone.</param>
    /// <param name="since">Time of the first assessment since start; null before it.</param>
    public string Render(PageView view, PageSources sources, DegreeText text, TimeProvider time, DateTimeOffset? since)
    {
        StringBuilder html = new(16_000);
        for (int i = 0; i < _parts.Length; i++)
        {
            string part = _parts[i];
            html.Append(i % 2 == 0 ? part
                : part.StartsWith('{') ? Markup(part.Trim('{', '}'), view, sources, text)
                : Escape(Text(part)));
        }

        return html.ToString();

        string Text(string name) => name switch
        {
            "sentUnixMs" => Whole(time.GetUtcNow().ToUnixTimeMilliseconds()),
            "sinceUnixS" => sources.AnyEmulated && since is { } first ? Whole(first.ToUnixTimeSeconds()) : "",
            "speed" => string.Create(CultureInfo.InvariantCulture, $"{sources.Demo()?.Speed ?? 1:0.#}"),
            "hours" => _chartHours.ToString(CultureInfo.InvariantCulture),
            "unit" => text.Unit,
            "scale" => text.ConvertDifference(1).ToString(CultureInfo.InvariantCulture),
            "offset" => text.Convert(0).ToString(CultureInfo.InvariantCulture),
            "zone" => time.LocalTimeZone.Id,
            "charts" => PageAssets.HasChartLibrary ? "library" : "picture",
            "jobs" => sources.HasJobs ? "yes" : "no",
            _ => view.Fields[name],
        };
    }

    private static string Whole(long number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Markup(string name, PageView view, PageSources sources, DegreeText text) => name switch
    {
        // The writer of the JSON escapes <, > and &, so that no text can end the element.
        "first" => JsonSerializer.Serialize(view, PageJson.Options),
        "sensors" => string.Concat(view.Sensors.Select(Health)),
        "outputs" => string.Concat(view.Outputs.Select(Health)),
        "demoStrip" => DemoStrip(view, sources),
        "pieceEntry" => sources.PieceEntry is { } entry ? EntryForm(entry, view, text) : "",
        _ => throw new InvalidOperationException($"page.html asks for {name}, which nothing makes."),
    };

    private static string DemoStrip(PageView view, PageSources sources)
    {
        if (!sources.AnyEmulated)
        {
            return "";
        }

        string emulated = string.Join(", ", sources.Sensors.Where(s => s.Emulated).Select(s => s.Name));
        string whole = sources.Sensors.All(s => s.Emulated) ? "Demo" : "Part demo";
        return $"<p class=\"demo\"><strong>{whole}</strong><span data-field=\"demo\">{Escape(view.Fields["demo"])}</span><span>emulated: {Escape(emulated)}</span></p>";
    }

    /// <summary>The page's own unit in, °C out: the script sends (number - offset) / scale.</summary>
    private static string EntryForm(PieceEntry entry, PageView view, DegreeText text) => string.Create(CultureInfo.InvariantCulture, $"""
        <div class="entry"><dt><label for="pieceNumber">Piece measured by hand, {text.Unit}</label></dt>
              <dd><form id="pieceForm" novalidate data-scale="{text.ConvertDifference(1)}" data-offset="{text.Convert(0)}">
                <input id="pieceNumber" type="number" inputmode="decimal" step="0.1" min="{text.Convert(entry.LowestC):0.#}" max="{text.Convert(entry.HighestC):0.#}" autocomplete="off" aria-describedby="pieceTyped pieceError">
                <button type="submit">Set</button>
              </form></dd>
              <dd class="small" id="pieceTyped" data-field="pieceTyped">{Escape(view.Fields["pieceTyped"])}</dd>
              <dd class="small refusal"><span id="pieceError" role="alert" data-range="Give a number from {text.Convert(entry.LowestC):0.#} to {text.Convert(entry.HighestC):0.#} {text.Unit}, for example {text.Convert(PieceEntry.ExampleC):0.0}."></span></dd></div>
        """);

    private static string Health(HealthLine line) =>
        $"<li class=\"{(line.Good ? "good" : "bad")}\"><b>{Escape(line.Name)}</b><span> {Escape(line.State)}{(line.Detail.Length > 0 ? ", " + Escape(line.Detail) : "")}</span></li>";

    private static string Escape(string text) => HtmlEncoder.Default.Encode(text);

    [GeneratedRegex(@"\{\{(\{?[A-Za-z]+\}?)\}\}")]
    private static partial Regex Placeholder();
}
