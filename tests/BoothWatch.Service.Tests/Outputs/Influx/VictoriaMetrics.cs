using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Text.Json;

namespace BoothWatch.Service.Tests.Outputs.Influx;

/// <summary>
/// The distribution's VictoriaMetrics, a database that takes InfluxDB's v2 write protocol: a process of its own on a free
/// loopback port, with a temporary folder. It keeps a sample that is written twice twice, unless it is told to
/// deduplicate, so a repeat can be seen.
/// </summary>
internal sealed class VictoriaMetrics : IAsyncDisposable
{
    private static readonly string[] Places = ["/usr/bin/victoria-metrics", "/usr/local/bin/victoria-metrics"];
    // Left to itself an export ends with the last whole second.
    private const long EndOfTime = 9_999_999_999;
    private static readonly TimeSpan StartLimit = TimeSpan.FromSeconds(60);

    private readonly string _folder = Directory.CreateTempSubdirectory("boothwatch-database-").FullName;
    private readonly bool _deduplicate;
    private readonly HttpClient _client = new() { Timeout = TimeSpan.FromSeconds(60) };
    private Process? _process;

    private VictoriaMetrics(bool deduplicate)
    {
        _deduplicate = deduplicate;
        Port = FreePort();
    }

    /// <summary>Path of the program; VICTORIA_METRICS_PATH overrides where it is looked for.</summary>
    public static string ProgramPath => Environment.GetEnvironmentVariable("VICTORIA_METRICS_PATH") is { Length: > 0 } set
        ? set
        : Places.FirstOrDefault(File.Exists) ?? Places[0];

    /// <summary>Why tests with it are skipped; null when they run.</summary>
    public static string? SkipReason =>
        File.Exists(ProgramPath) || Environment.GetEnvironmentVariable("CI") == "true"
            ? null
            : "victoria-metrics is not installed (Debian: apt install victoria-metrics); set VICTORIA_METRICS_PATH if it lies elsewhere";

    public int Port { get; }

    public Process Process => _process ?? throw new InvalidOperationException("It has not been started.");

    public string Url => $"http://127.0.0.1:{Port}";

    public static async Task<VictoriaMetrics> StartAsync(bool deduplicate = false)
    {
        var database = new VictoriaMetrics(deduplicate);
        await database.StartAgainAsync();
        return database;
    }

    public static int FreePort()
    {
        using TcpListener listener = new(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    /// <summary>Starts it on the same port with the same data.</summary>
    public async Task StartAgainAsync()
    {
        var start = new ProcessStartInfo(ProgramPath)
        {
            ArgumentList =
            {
                $"-storageDataPath={_folder}", $"-httpListenAddr=127.0.0.1:{Port}", "-retentionPeriod=100y", "-loggerLevel=ERROR",
                "-memory.allowedBytes=64MB",
            },
            RedirectStandardError = true,
        };
        if (_deduplicate)
        {
            start.ArgumentList.Add("-dedup.minScrapeInterval=1ms");
        }

        _process = Process.Start(start) ?? throw new InvalidOperationException($"{ProgramPath} did not start");
        _process.ErrorDataReceived += static (_, _) => { };
        _process.BeginErrorReadLine();
        long started = TimeProvider.System.GetTimestamp();
        while (!await AnswersAsync())
        {
            if (_process.HasExited || TimeProvider.System.GetElapsedTime(started) > StartLimit)
            {
                throw new InvalidOperationException($"{ProgramPath} does not answer on port {Port}");
            }

            await Task.Delay(TimeSpan.FromMilliseconds(50), TimeProvider.System);
        }
    }

    /// <summary>Stops it in good order, so that it keeps all that it acknowledged.</summary>
    public async Task StopAsync()
    {
        if (_process is { HasExited: false } running)
        {
            using Process kill = Process.Start("kill", ["-TERM", $"{running.Id}"]);
            await kill.WaitForExitAsync();
            await running.WaitForExitAsync().WaitAsync(TimeSpan.FromSeconds(60));
        }
    }

    /// <summary>Every sample of one field, as stored: milliseconds since 1970 and value.</summary>
    public async Task<IReadOnlyList<(long TimeMs, double Value)>> SamplesAsync(string measurement, string field)
    {
        await _client.GetStringAsync(new Uri($"{Url}/internal/force_flush"));
        string lines = await _client.GetStringAsync(
            new Uri($"{Url}/api/v1/export?match[]={Uri.EscapeDataString($"{measurement}_{field}")}&start=0&end={EndOfTime}"));
        var samples = new List<(long, double)>();
        foreach (string line in lines.Split('\n', StringSplitOptions.RemoveEmptyEntries))
        {
            using JsonDocument series = JsonDocument.Parse(line);
            samples.AddRange(series.RootElement.GetProperty("timestamps").EnumerateArray().Zip(
                series.RootElement.GetProperty("values").EnumerateArray(),
                (time, value) => (time.GetInt64(), value.GetDouble())));
        }

        return [.. samples.OrderBy(sample => sample.Item1)];
    }

    /// <summary>The labels of one field's first series.</summary>
    public async Task<IReadOnlyDictionary<string, string>> LabelsAsync(string measurement, string field)
    {
        await _client.GetStringAsync(new Uri($"{Url}/internal/force_flush"));
        string lines = await _client.GetStringAsync(
            new Uri($"{Url}/api/v1/export?match[]={Uri.EscapeDataString($"{measurement}_{field}")}&start=0&end={EndOfTime}"));
        using JsonDocument series = JsonDocument.Parse(lines.Split('\n')[0]);
        return series.RootElement.GetProperty("metric").EnumerateObject()
            .ToDictionary(label => label.Name, label => label.Value.GetString()!);
    }

    public async ValueTask DisposeAsync()
    {
        if (_process is { HasExited: false } running)
        {
            running.Kill();
            await running.WaitForExitAsync();
        }

        _process?.Dispose();
        _client.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    private async Task<bool> AnswersAsync()
    {
        try
        {
            return await _client.GetStringAsync(new Uri($"{Url}/health")) == "OK";
        }
        catch (HttpRequestException)
        {
            return false;
        }
    }
}
