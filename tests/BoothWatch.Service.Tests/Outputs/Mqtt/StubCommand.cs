using System.Text.Json;
using BoothWatch.Service.Outputs.Mqtt;

namespace BoothWatch.Service.Tests.Outputs.Mqtt;

/// <summary>Obeys mark-coat, and marks nothing.</summary>
internal sealed class StubCommand : IMqttCommand
{
    public string Name => "mark-coat";

    public CommandReply Obey(JsonElement command) => CommandReply.Done("nothing was done");
}
