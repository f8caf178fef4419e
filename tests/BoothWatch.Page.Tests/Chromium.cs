namespace BoothWatch.Page.Tests;

/// <summary>The distribution's Chromium.</summary>
public static class Chromium
{
    private static readonly string[] Places = ["/usr/bin/chromium", "/usr/bin/chromium-browser"];

    /// <summary>Path of the program; CHROMIUM_PATH overrides where it is looked for.</summary>
    public static string Path => Environment.GetEnvironmentVariable("CHROMIUM_PATH") is { Length: > 0 } set
        ? set
        : Places.FirstOrDefault(File.Exists) ?? Places[0];

    /// <summary>Flags for a quiet headless browser that calls nobody.</summary>
    public static string[] Flags { get; } =
    [
        "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
        "--disable-background-networking", "--disable-component-update", "--disable-sync",
    ];

    /// <summary>Why browser tests are skipped; null when they run.</summary>
    public static string? SkipReason =>
        File.Exists(Path) || Environment.GetEnvironmentVariable("CI") == "true"
            ? null
            : "Chromium is not installed (Debian: apt install chromium); set CHROMIUM_PATH if it lies elsewhere";
}
