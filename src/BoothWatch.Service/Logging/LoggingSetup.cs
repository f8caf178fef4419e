using System.Globalization;
using Microsoft.Extensions.Options;
using Serilog;
using Serilog.Events;

namespace BoothWatch.Service.Logging;

/// <summary>Registers the log: one compact line an event, on the console, where the service manager picks it up.</summary>
public static class LoggingSetup
{
    private const string Line = "{Timestamp:HH:mm:ss} {Level:u3} {SourceContext:l} {Message:lj}{NewLine}{Exception}";

    /// <summary>Adds the log with the levels of the <c>logging</c> section.</summary>
    public static IServiceCollection AddBoothLogging(this IServiceCollection services)
    {
        services.AddOptionsWithValidateOnStart<LoggingOptions>().BindConfiguration(LoggingOptions.Section);
        return services.AddSerilog((provider, log) =>
        {
            LoggingOptions options = provider.GetRequiredService<IOptions<LoggingOptions>>().Value;
            log.MinimumLevel.Is(options.Level)
                .MinimumLevel.Override("Microsoft", options.FrameworkLevel)
                .MinimumLevel.Override("System", options.FrameworkLevel)
                .Filter.ByExcluding(IsFailedStart)
                .Enrich.With<ShortSource>()
                .WriteTo.Console(outputTemplate: Line, formatProvider: CultureInfo.InvariantCulture);
        });
    }

    // The host logs it with its whole stack and raises it as well: whoever starts the host reports it, in one line.
    private static bool IsFailedStart(LogEvent entry) => entry.MessageTemplate.Text == "Hosting failed to start";
}
