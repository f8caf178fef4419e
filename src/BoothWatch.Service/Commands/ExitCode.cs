namespace BoothWatch.Service.Commands;

/// <summary>Exit codes of every command.</summary>
public static class ExitCode
{
    /// <summary>All went well.</summary>
    public const int Good = 0;

    /// <summary>The command ran and something it looked at failed: a table row, a sensor, the service itself.</summary>
    public const int Failed = 1;

    /// <summary>Wrong arguments or a wrong configuration: nothing was done.</summary>
    public const int Wrong = 2;

    /// <summary>Stopped with Ctrl-C before the end (128 + SIGINT, as shells count).</summary>
    public const int Interrupted = 130;
}
