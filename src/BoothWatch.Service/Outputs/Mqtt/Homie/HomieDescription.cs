using System.Text.Json;
using System.Text.Json.Nodes;

namespace BoothWatch.Service.Outputs.Mqtt.Homie;

/// <summary>The <c>$description</c> document of the booth after the Homie convention 5.</summary>
/// <remarks>Source: The Homie Convention 5.0, https://homieiot.github.io (CC BY 4.0).</remarks>
internal static class HomieDescription
{
    /// <summary>Version of the document. Raise it with every change of <see cref="HomieProperties"/>; a test reminds you.</summary>
    public const int Version = 2;

    public static byte[] Of(string shop, string booth)
    {
        var nodes = new JsonObject();
        foreach ((string id, string name) in HomieProperties.Nodes)
        {
            var properties = new JsonObject();
            foreach (HomieProperty property in HomieProperties.All.Where(property => property.Node == id))
            {
                properties.Add(property.Id, Describe(property));
            }

            nodes.Add(id, new JsonObject { ["name"] = name, ["properties"] = properties });
        }

        return JsonSerializer.SerializeToUtf8Bytes(
            new JsonObject { ["homie"] = "5.0", ["version"] = Version, ["name"] = $"{shop}, {booth} booth", ["nodes"] = nodes },
            MqttJson.Options);
    }

    private static JsonObject Describe(HomieProperty property)
    {
        var description = new JsonObject { ["name"] = property.Name, ["datatype"] = property.Datatype };
        if (property.Format is not null)
        {
            description["format"] = property.Format;
        }

        if (property.Unit is not null)
        {
            description["unit"] = property.Unit;
        }

        return description;
    }
}
