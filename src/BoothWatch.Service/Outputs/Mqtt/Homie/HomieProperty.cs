using BoothWatch.Verdicts;

namespace BoothWatch.Service.Outputs.Mqtt.Homie;

/// <summary>One property of a node after the Homie convention 5: what it is, and its value in an assessment.</summary>
/// <param name="Node">Id of the node.</param>
/// <param name="Id">Id of the property.</param>
/// <param name="Name">Name for people.</param>
/// <param name="Datatype">Homie data type: float, string, enum, boolean or datetime.</param>
/// <param name="Value">The payload; null when it is not known, and then the topic is cleared.</param>
/// <param name="Unit">Unit of the value; null when it has none.</param>
/// <param name="Format">What the value may be, as the convention writes it for the data type; null when anything.</param>
internal sealed record HomieProperty(
    string Node, string Id, string Name, string Datatype, Func<Assessment, string?> Value, string? Unit = null, string? Format = null);
