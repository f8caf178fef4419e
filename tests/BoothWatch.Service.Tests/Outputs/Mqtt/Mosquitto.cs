using System.Diagnostics;
using System.Net;
using System.Net.Sockets;

namespace BoothWatch.Service.Tests.Outputs.Mqtt;

/// <summary>A mosquitto of the test's own, on a free loopback port and in a folder of its own.</summary>
internal sealed class Mosquitto : IAsyncDisposable
{
    private static readonly string[] Places = ["/usr/sbin/mosquitto", "/usr/local/sbin/mosquitto", "/opt/homebrew/sbin/mosquitto"];

    private readonly string _configuration;
    private Process? _process;

    /// <param name="settings">Lines of its configuration beside the listener.</param>
    public Mosquitto(params string[] settings)
    {
        _configuration = Path.Combine(Folder, "mosquitto.conf");
        File.WriteAllLines(_configuration,
        [
            $"listener {Port} 127.0.0.1", "user root", "persistence true", $"persistence_location {Folder}/", "autosave_interval 1", .. settings,
        ]);
    }

    /// <summary>Why tests with it are skipped; null when they run.</summary>
    public static string? SkipReason =>
        Program is not null || Environment.GetEnvironmentVariable("CI") == "true" ? null : "mosquitto is not installed (Debian: apt install mosquitto)";

    public string Folder { get; } = Directory.CreateTempSubdirectory("boothwatch-mosquitto-").FullName;

    public int Port { get; } = FreePort();

    private static string? Program => Places.FirstOrDefault(File.Exists);

    public static int FreePort()
    {
        using TcpListener listener = new(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    public static async Task<Mosquitto> StartAsync(params string[] settings)
    {
        Mosquitto broker = new(settings);
        await broker.StartAsync();
        return broker;
    }

    /// <summary>Starts it and waits until it listens.</summary>
    public async Task StartAsync()
    {
        _process = Process.Start(new ProcessStartInfo(Program ?? "mosquitto", ["-c", _configuration]) { RedirectStandardError = true, RedirectStandardOutput = true })!;
        _process.ErrorDataReceived += (_, _) => { };
        _process.BeginErrorReadLine();
        _process.BeginOutputReadLine();
        await Eventually.TrueAsync(Listens, "mosquitto listens");
    }

    /// <summary>Kills it with SIGKILL.</summary>
    public async Task KillAsync()
    {
        if (_process is { } process)
        {
            _process = null;
            process.Kill();
            await process.WaitForExitAsync();
            process.Dispose();
        }
    }

    /// <summary>Stops it in good order, so that it keeps on the disk what it retains.</summary>
    public async Task StopAsync()
    {
        if (_process is { } process)
        {
            _process = null;
            using (Process kill = Process.Start("kill", ["-TERM", $"{process.Id}"]))
            {
                await kill.WaitForExitAsync();
            }

            await process.WaitForExitAsync().WaitAsync(TimeSpan.FromSeconds(60));
            process.Dispose();
        }
    }

    public async ValueTask DisposeAsync()
    {
        await KillAsync();
        Directory.Delete(Folder, recursive: true);
    }

    private bool Listens()
    {
        using Socket socket = new(AddressFamily.InterNetwork, SocketType.Stream, ProtocolType.Tcp);
        try
        {
            socket.Connect(IPAddress.Loopback, Port);
            return true;
        }
        catch (SocketException)
        {
            return false;
        }
    }
}
