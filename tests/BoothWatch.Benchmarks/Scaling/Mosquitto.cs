using System.Diagnostics;
using System.Net.Sockets;
using BoothWatch.Service.Tests.Outputs.Influx;

namespace BoothWatch.Benchmarks.Scaling;

/// <summary>The distribution's Mosquitto on a free loopback port, without persistence.</summary>
internal sealed class Mosquitto : IAsyncDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("boothwatch-broker-").FullName;

    private Mosquitto()
    {
        Port = VictoriaMetrics.FreePort();
        string config = Path.Combine(_folder, "mosquitto.conf");
        File.WriteAllText(config, $"listener {Port} 127.0.0.1\nallow_anonymous true\npersistence false\nlog_type error\n");
        Process = Process.Start(new ProcessStartInfo(ProgramPath, ["-c", config]) { RedirectStandardError = true })!;
        Process.ErrorDataReceived += static (_, _) => { };
        Process.BeginErrorReadLine();
    }

    public static string ProgramPath { get; } =
        new[] { "/usr/sbin/mosquitto", "/usr/bin/mosquitto" }.FirstOrDefault(File.Exists) ?? "/usr/sbin/mosquitto";

    public int Port { get; }

    public Process Process { get; }

    public static async Task<Mosquitto> StartAsync()
    {
        var broker = new Mosquitto();
        for (int attempt = 0; attempt < 200; attempt++)
        {
            try
            {
                using var client = new TcpClient();
                await client.ConnectAsync("127.0.0.1", broker.Port);
                return broker;
            }
            catch (SocketException)
            {
                await Task.Delay(TimeSpan.FromMilliseconds(50), TimeProvider.System);
            }
        }

        throw new InvalidOperationException($"{ProgramPath} does not answer");
    }

    public async ValueTask DisposeAsync()
    {
        Process.Kill();
        await Process.WaitForExitAsync();
        Process.Dispose();
        Directory.Delete(_folder, recursive: true);
    }
}
