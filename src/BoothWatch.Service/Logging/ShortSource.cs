using Serilog.Core;
using Serilog.Events;

namespace BoothWatch.Service.Logging;

/// <summary>Shortens the source of an event to the class name.</summary>
internal sealed class ShortSource : ILogEventEnricher
{
    public void Enrich(LogEvent logEvent, ILogEventPropertyFactory propertyFactory)
    {
        if (logEvent.Properties.TryGetValue(Constants.SourceContextPropertyName, out LogEventPropertyValue? value)
            && value is ScalarValue { Value: string source })
        {
            logEvent.AddOrUpdateProperty(propertyFactory.CreateProperty(
                Constants.SourceContextPropertyName, source[(source.LastIndexOf('.') + 1)..]));
        }
    }
}
