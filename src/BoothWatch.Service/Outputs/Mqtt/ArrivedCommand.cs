using System.Text.Json;

namespace BoothWatch.Service.Outputs.Mqtt;

/// <summary>A command on its way from the connection to what obeys it, or to its refusal.</summary>
/// <param name="Name">The last level of its topic.</param>
/// <param name="Id">Its id; null when it was not read.</param>
/// <param name="Payload">Its payload; of no value when it is refused.</param>
/// <param name="Obeys">What obeys it; null when it is refused.</param>
/// <param name="Why">Why it is refused; null when it is taken.</param>
internal sealed record ArrivedCommand(string Name, string? Id, JsonElement Payload, IMqttCommand? Obeys, CommandRefusal? Why);
