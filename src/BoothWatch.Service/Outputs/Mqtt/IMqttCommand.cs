using System.Text.Json;

namespace BoothWatch.Service.Outputs.Mqtt;

/// <summary>Obeys one of the documented commands.</summary>
internal interface IMqttCommand
{
    /// <summary>Name of the command, the last level of its topic.</summary>
    string Name { get; }

    /// <summary>Does what the command says, or hands it on. Returns at once and does not throw.</summary>
    /// <param name="command">The payload, an object with a good <c>id</c> and a time of now.</param>
    /// <returns>False when it lacks what the command needs.</returns>
    bool Obey(JsonElement command);
}
