using Serilog.Events;

namespace BoothWatch.Service.Logging;

/// <summary>What goes to the log.</summary>
public sealed class LoggingOptions
{
    /// <summary>Section of the configuration.</summary>
    public const string Section = "logging";

    /// <summary>Least level that is written: verbose, debug, information, warning, error, fatal; default information.</summary>
    public LogEventLevel Level { get; set; } = LogEventLevel.Information;

    /// <summary>Least level of what the web framework and the host write; default warning.</summary>
    public LogEventLevel FrameworkLevel { get; set; } = LogEventLevel.Warning;
}
