using System.Text;
using BoothWatch.Service.Setup;

namespace BoothWatch.Service.Tests.Setup;

/// <summary>The process that the kill test kills: it replaces a file by one of two texts in turn, without pause, and says so each time.</summary>
internal static class SettingsWriter
{
    public const string Command = "write-settings";

    public static async Task<int> Run(string path)
    {
        ConfigurationVersions versions = new(path);
        await using StreamWriter written = new(Console.OpenStandardOutput()) { AutoFlush = true };
        for (int count = 0; ; count++)
        {
            versions.Replace(Text(count));
            await written.WriteLineAsync("written");
        }
    }

    /// <summary>One of two texts, of the size of a real configuration and with its mark at both ends.</summary>
    public static byte[] Text(int count) => Encoding.UTF8.GetBytes($"begin {count % 2}\n{new string((char)('a' + (count % 2)), 25_000 + (count % 2))}\nend {count % 2}\n");
}
