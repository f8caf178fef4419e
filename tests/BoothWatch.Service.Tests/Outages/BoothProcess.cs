using System.Diagnostics;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace BoothWatch.Service.Tests.Outages;

/// <summary>The real program in a process of its own, on the emulated shop, as a user starts it.</summary>
internal sealed partial class BoothProcess : IAsyncDisposable
{
    private static readonly TimeSpan StartLimit = TimeSpan.FromMinutes(3);
    private readonly Process _process;
    private readonly HttpClient _client = new();
    private readonly TaskCompletionSource<Uri> _page = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly List<string> _log = [];

    private BoothProcess(Process process) => _process = process;

    public string Log
    {
        get
        {
            lock (_log)
            {
                return string.Join('\n', _log);
            }
        }
    }

    /// <summary>Starts it on a port that the system chooses and it says in its log: one chosen beforehand may be taken by then.</summary>
    public static async Task<BoothProcess> StartAsync(string folder, object? influx = null)
    {
        string config = Path.Combine(Directory.CreateTempSubdirectory("boothwatch-config-").FullName, "boothwatch.json");
        await File.WriteAllTextAsync(config, JsonSerializer.Serialize(new
        {
            series = new { folder },
            page = new { url = "http://127.0.0.1:0" },
            influx = influx ?? new { url = "" },
        }));
        var start = new ProcessStartInfo(Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") ?? "dotnet")
        {
            ArgumentList = { typeof(BoothHost).Assembly.Location, "run", "--config", config },
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        var booth = new BoothProcess(Process.Start(start)!);
        booth._process.OutputDataReceived += booth.Take;
        booth._process.ErrorDataReceived += booth.Take;
        booth._process.BeginOutputReadLine();
        booth._process.BeginErrorReadLine();
        Task ended = booth._process.WaitForExitAsync();
        Task first = await Task.WhenAny(booth._page.Task, ended, Task.Delay(StartLimit, TimeProvider.System));
        if (first != booth._page.Task)
        {
            string log = booth.Log;
            await booth.DisposeAsync();
            Assert.Fail($"the program {(first == ended ? "ended by itself" : "does not say where its page is")}:\n{log}");
        }

        booth._client.BaseAddress = await booth._page.Task;
        return booth;
    }

    /// <summary>Asks until the answer is as wanted; the answer.</summary>
    public async Task<JsonElement> UntilAsync(string address, Func<JsonElement, bool> wanted, TimeSpan? limit = null)
    {
        long started = TimeProvider.System.GetTimestamp();
        string last = "no answer";
        while (TimeProvider.System.GetElapsedTime(started) < (limit ?? StartLimit))
        {
            Assert.False(_process.HasExited, $"the program ended by itself:\n{Log}");
            try
            {
                last = await TextAsync(address);
                using JsonDocument answer = JsonDocument.Parse(last);
                if (wanted(answer.RootElement))
                {
                    return answer.RootElement.Clone();
                }
            }
            catch (HttpRequestException e)
            {
                last = e.Message;
            }

            await Task.Delay(TimeSpan.FromMilliseconds(50), TimeProvider.System);
        }

        throw new TimeoutException($"{address} never answered as wanted; last: {last}\n{Log}");
    }

    public Task<string> TextAsync(string address) => _client.GetStringAsync(new Uri(address, UriKind.Relative));

    /// <summary>Asks for one media type; the media type that came, and the text.</summary>
    public async Task<(string MediaType, string Text)> TextAsAsync(string address, string accept)
    {
        using HttpRequestMessage request = new(HttpMethod.Get, new Uri(address, UriKind.Relative));
        request.Headers.Add("Accept", accept);
        using HttpResponseMessage response = await _client.SendAsync(request);
        return (response.Content.Headers.ContentType!.MediaType!, await response.Content.ReadAsStringAsync());
    }

    /// <summary>One output of an answer of /api/health.</summary>
    public static JsonElement OutputOf(JsonElement health, string name) =>
        health.GetProperty("outputs").EnumerateArray().Single(entry => entry.GetProperty("name").GetString() == name);

    /// <summary>SIGKILL: no chance to finish anything.</summary>
    public async Task KillAsync()
    {
        _process.Kill();
        await _process.WaitForExitAsync();
    }

    public async ValueTask DisposeAsync()
    {
        if (!_process.HasExited)
        {
            await KillAsync();
        }

        _process.Dispose();
        _client.Dispose();
    }

    private void Take(object sender, DataReceivedEventArgs e)
    {
        lock (_log)
        {
            _log.Add(e.Data ?? "");
        }

        if (Announcement().Match(e.Data ?? "") is { Success: true } announced)
        {
            _page.TrySetResult(new Uri(announced.Groups[1].Value));
        }
    }

    [GeneratedRegex("Open the page at (http\\S+)")]
    private static partial Regex Announcement();
}
