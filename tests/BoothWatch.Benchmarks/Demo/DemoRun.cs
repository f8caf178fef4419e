using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text.Json;
using BoothWatch.Service.Assessing;

namespace BoothWatch.Benchmarks.Demo;

/// <summary>
/// Runs the service as a user would, in a process of its own on the emulated shop, and measures what a user feels:
/// seconds from start to the first verdict on /api/now, and resident memory over the minutes that follow.
/// </summary>
internal static class DemoRun
{
    private static readonly TimeSpan FirstVerdictLimit = TimeSpan.FromMinutes(1);

    /// <summary>Runs for <paramref name="minutes"/> and prints the figures.</summary>
    public static async Task<int> RunAsync(double minutes, TextWriter output)
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("boothwatch-demo-");
        try
        {
            Uri page = new($"http://127.0.0.1:{FreePort()}");
            string config = Path.Combine(folder.FullName, "boothwatch.json");
            await File.WriteAllTextAsync(config, JsonSerializer.Serialize(new
            {
                series = new { folder = folder.FullName },
                page = new { url = page.ToString() },
            }));

            long started = Stopwatch.GetTimestamp();
            using Process service = Start(config);
            using HttpClient client = new() { BaseAddress = page };
            string verdict = await FirstVerdictAsync(client, started);
            await output.WriteLineAsync(string.Create(
                CultureInfo.InvariantCulture,
                $"start to first verdict ({verdict}): {Stopwatch.GetElapsedTime(started).TotalSeconds:0.00} s"));

            TimeSpan sampleEvery = TimeSpan.FromSeconds(Math.Min(30, minutes * 60));
            while (Stopwatch.GetElapsedTime(started) < TimeSpan.FromMinutes(minutes))
            {
                await Task.Delay(sampleEvery, TimeProvider.System);
                service.Refresh();
                await output.WriteLineAsync(string.Create(
                    CultureInfo.InvariantCulture,
                    $"after {Stopwatch.GetElapsedTime(started).TotalMinutes:0.0} min: resident {service.WorkingSet64 / 1e6:0} MB, processor {service.TotalProcessorTime.TotalSeconds:0.0} s"));
            }

            service.Kill();
            await service.WaitForExitAsync();
            return 0;
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static Process Start(string config)
    {
        ProcessStartInfo start = new("dotnet")
        {
            ArgumentList = { typeof(AssessmentLoop).Assembly.Location, "run", "--config", config },
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        Process process = Process.Start(start) ?? throw new InvalidOperationException("dotnet did not start");
        process.OutputDataReceived += static (_, _) => { };
        process.ErrorDataReceived += static (_, _) => { };
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        return process;
    }

    /// <summary>Waits for the first verdict that rests on an answer of the model.</summary>
    private static async Task<string> FirstVerdictAsync(HttpClient client, long started)
    {
        while (Stopwatch.GetElapsedTime(started) < FirstVerdictLimit)
        {
            try
            {
                using JsonDocument now = JsonDocument.Parse(await client.GetStringAsync(new Uri("/api/now", UriKind.Relative)));
                if (now.RootElement.TryGetProperty("film", out JsonElement film) && film.ValueKind == JsonValueKind.Object)
                {
                    return now.RootElement.GetProperty("verdict").GetString() ?? "";
                }
            }
            catch (HttpRequestException)
            {
                // The page is not up yet.
            }

            await Task.Delay(TimeSpan.FromMilliseconds(20), TimeProvider.System);
        }

        throw new TimeoutException($"no verdict within {FirstVerdictLimit}");
    }

    private static int FreePort()
    {
        using TcpListener listener = new(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
