using BoothWatch.Verdicts;
using ScottPlot;

namespace BoothWatch.Service.Page;

/// <summary>Colours of the chart. The lines also differ by pattern, the verdicts also by their lane.</summary>
internal sealed record ChartTheme(Color Ground, Color Ink, Color Grid, Color Air, Color DewPoint, Color Critical, Color Film)
{
    public static ChartTheme Dark { get; } = new(
        Color.FromHex("#171c24"), Color.FromHex("#c3ccd7"), Color.FromHex("#2c3540"),
        Color.FromHex("#f2f5f8"), Color.FromHex("#5cb8f0"), Color.FromHex("#ffcf55"), Color.FromHex("#e59ac4"));

    public static ChartTheme Light { get; } = new(
        Color.FromHex("#ffffff"), Color.FromHex("#2b333d"), Color.FromHex("#e3e7ec"),
        Color.FromHex("#20262e"), Color.FromHex("#0a62a3"), Color.FromHex("#8f6500"), Color.FromHex("#a03a77"));

    public static ChartTheme Of(string name) => name == "light" ? Light : Dark;

    /// <summary>Green, yellow, red after IEC 60073.</summary>
    public static Color Of(Verdict verdict) => verdict switch
    {
        Verdict.Spray => Color.FromHex("#2ab07f"),
        Verdict.SlowDown => Color.FromHex("#ffc83d"),
        _ => Color.FromHex("#d8372b"),
    };
}
