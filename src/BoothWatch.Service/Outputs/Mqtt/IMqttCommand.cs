using System.Text.Json;

namespace BoothWatch.Service.Outputs.Mqtt;

/// <summary>Obeys one of the documented commands.</summary>
internal interface IMqttCommand
{
    /// <summary>Name of the command, the last level of its topic.</summary>
    string Name { get; }

    /// <summary>Does what the command says, or hands it on. Called off the connection, one command after the other, so it may take a moment; does not throw.</summary>
    /// <param name="command">The payload, an object with a good <c>id</c> and a time of now. Each <c>id</c> comes once.</param>
    /// <returns>What became of it, for the answer.</returns>
    CommandReply Obey(JsonElement command);
}
