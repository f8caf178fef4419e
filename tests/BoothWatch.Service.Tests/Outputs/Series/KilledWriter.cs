using System.Diagnostics;

namespace BoothWatch.Service.Tests.Outputs.Series;

/// <summary>Runs a writing command of this test program in a process of its own, and kills it with SIGKILL in mid-write.</summary>
internal static class KilledWriter
{
    /// <summary>The whole lines that the writer wrote, each an acknowledgement; a last line that the kill cut is none.</summary>
    /// <param name="command">The command.</param>
    /// <param name="path">The file that it writes.</param>
    /// <param name="after">How long it writes on after its first lines.</param>
    /// <param name="patience">How long each of the first lines may take.</param>
    /// <param name="firstLines">How many lines to wait for.</param>
    public static async Task<string[]> RunAsync(string command, string path, TimeSpan after, TimeSpan patience, int firstLines = 1)
    {
        var start = new ProcessStartInfo(Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") ?? "dotnet")
        {
            ArgumentList = { typeof(KilledWriter).Assembly.Location, command, path },
            RedirectStandardOutput = true,
        };
        using Process writer = Process.Start(start)!;
        try
        {
            List<string> lines = [];
            for (int i = 0; i < firstLines; i++)
            {
                string? line = await writer.StandardOutput.ReadLineAsync().WaitAsync(patience);
                Assert.NotNull(line);
                lines.Add(line);
            }

            Task<string> rest = writer.StandardOutput.ReadToEndAsync();
            await Task.Delay(after, TimeProvider.System);
            Assert.False(writer.HasExited, "the writer ended by itself");
            writer.Kill();
            await writer.WaitForExitAsync();
            return [.. lines, .. (await rest).Split('\n')[..^1]];
        }
        finally
        {
            if (!writer.HasExited)
            {
                writer.Kill();
            }
        }
    }
}
