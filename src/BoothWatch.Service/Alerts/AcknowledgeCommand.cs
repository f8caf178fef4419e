using System.Text.Json;
using BoothWatch.Service.Outputs.Alerts;
using BoothWatch.Service.Outputs.Mqtt;

namespace BoothWatch.Service.Alerts;

/// <summary>The MQTT command that acknowledges an alert; here, because outputs may not know each other.</summary>
internal sealed class AcknowledgeCommand(AlertDesk desk) : IMqttCommand
{
    private const int LongestId = 64;

    public string Name => "acknowledge-alert";

    public CommandReply Obey(JsonElement command)
    {
        if (!command.TryGetProperty("alert", out JsonElement alert) || alert.ValueKind != JsonValueKind.String || alert.GetString() is not { Length: >= 1 and <= LongestId } id)
        {
            return CommandReply.Malformed("alert is missing; give the id of the alert");
        }

        desk.AcknowledgeSoon(id, "mqtt");
        return CommandReply.Done("handed on");
    }
}
