using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Nodes;
using BoothWatch.Readings;
using BoothWatch.Service.Outputs.Mqtt;
using BoothWatch.Service.Tests.Outputs.Series;
using BoothWatch.Verdicts;
using Microsoft.Extensions.DependencyInjection;
using MQTTnet.Protocol;

namespace BoothWatch.Service.Tests.Outputs.Mqtt;

/// <summary>docs/topics/asyncapi.json against what is really published.</summary>
public sealed class AsyncApiTests : IDisposable
{
    private readonly JournalFolder _folder = new();
    private readonly AsyncApi _api = new();

    private static DateTimeOffset Now => TimeProvider.System.GetUtcNow();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Document_IsAsyncApi3_AndEveryReferenceLeadsSomewhere()
    {
        // AsyncAPI 3.0.0, AsyncAPI Object and Info Object: the required fields.
        Assert.Equal("3.0.0", (string?)_api.Document["asyncapi"]);
        Assert.NotNull((string?)_api.Document["info"]!["title"]);
        Assert.NotNull((string?)_api.Document["info"]!["version"]);
        List<string> references = [];
        Collect(_api.Document, references);
        Assert.NotEmpty(references);
        Assert.All(references, reference => Assert.NotNull(
            reference.Split('/').Skip(1).Aggregate<string, JsonNode?>(_api.Document, (node, name) => node?[name])));
    }

    [Fact]
    public async Task Published_OnTheEmbeddedBroker_IsWhatTheDocumentSays()
    {
        int port = Mosquitto.FreePort();
        MqttBooth booth = await MqttBooth.StartAsync(_folder, Commands, ("broker:port", port.ToString(CultureInfo.InvariantCulture)));
        await CheckAsync(booth, port, ["lost"]);
    }

    [MosquittoFact]
    public async Task Published_OnMosquitto_IsWhatTheDocumentSays()
    {
        await using Mosquitto broker = await Mosquitto.StartAsync("allow_anonymous true");
        MqttBooth booth = await MqttBooth.StartAsync(
            _folder, Commands, ("use", "external"), ("host", "127.0.0.1"), ("port", broker.Port.ToString(CultureInfo.InvariantCulture)));
        await CheckAsync(booth, broker.Port, ["lost"]);
    }

    [Fact]
    public void Commands_OfTheDocument_AreTheListOfTheIntake()
    {
        AsyncApi.Operation command = Assert.Single(_api.Operations, operation => operation.Action == "receive");

        Assert.Equal("boothwatch/{shop}/{booth}/command/{command}", command.Address);
        Assert.Equal(
            CommandIntake.Names,
            _api.Document["components"]!["parameters"]!["command"]!["enum"]!.AsArray().Select(name => (string)name!));
        Assert.False((bool)command.Mqtt["retain"]!);
        Assert.True(command.Accepts("""{"id":"a1","time":"2026-09-07T08:00:00Z"}"""));
        Assert.True(command.Accepts("""{"id":"a1","time":"2026-09-07T08:00:00Z","alert":"0198"}"""));
        Assert.False(command.Accepts("""{"id":"a1"}"""));
    }

    [Fact]
    public void Check_OfAPayloadThatIsWrong_Fires()
    {
        AsyncApi.Operation Of(string end) => _api.Operations.Single(operation => operation.Address.EndsWith(end, StringComparison.Ordinal));

        Assert.False(Of("air/temperature").Accepts("21.5 °C"));
        Assert.False(Of("verdict/state").Accepts("go"));
        Assert.False(Of("verdict/time").Accepts("2026-09-07T08:00:00+02:00"));
        Assert.False(Of("/assessment").Accepts("""{"verdict":"spray"}"""));
    }

    private static void Collect(JsonNode? node, List<string> references)
    {
        foreach (JsonNode? child in node switch { JsonObject o => o.Select(m => m.Value), JsonArray a => a, _ => Enumerable.Empty<JsonNode?>() })
        {
            Collect(child, references);
        }

        if (node is JsonObject container && container["$ref"] is JsonValue reference)
        {
            references.Add((string)reference!);
        }
    }

    private static void Commands(IServiceCollection services) => services.AddSingleton<IMqttCommand, StubCommand>();

    private async Task CheckAsync(MqttBooth booth, int port, string[] notSeen)
    {
        await Eventually.TrueAsync(() => booth.Connections == 1, "connected");
        (string state, string commands, string answers) = (booth.Topics.State, booth.Topics.Command, booth.Topics.CommandAnswer);
        await using MqttReader reader = await MqttReader.ConnectAsync(port);
        await using (booth)
        {
            foreach (Assessment assessment in Day())
            {
                await booth.PublishAsync(assessment);
            }

            await booth.SendAlertAsync();
            // One that is obeyed, and one that is refused before it is read.
            await reader.WriteAsync($"{commands}/mark-coat", $$"""{"id":"a1","time":"{{Now:O}}"}""");
            await reader.WriteAsync($"{commands}/start-fan", "now");
            await Eventually.TrueAsync(() => reader.All.Count(message => message.Topic == answers) == 2, "both commands are answered");
        }

        await Eventually.TrueAsync(() => reader.Last(state) == "disconnected", "the goodbye");
        AsyncApi.Operation[] sends = [.. _api.Operations.Where(operation => operation.Action == "send")];
        foreach (MqttReader.Heard message in reader.All.Where(message => !message.Topic.StartsWith($"{commands}/", StringComparison.Ordinal)))
        {
            AsyncApi.Operation operation = Assert.Single(sends, operation => operation.Covers(message.Topic));
            Assert.True(operation.Accepts(message.Payload), $"{message.Topic} does not fit its schema: {message.Payload}");
            Assert.Equal(operation.ContentType, message.ContentType);
            Assert.Equal((bool)operation.Mqtt["retain"]!, message.IsRetained);
            Assert.Equal((MqttQualityOfServiceLevel)(int)operation.Mqtt["qos"]!, message.Quality);
            Assert.Equal(message.Payload.Length == 0 ? 0 : (int?)operation.Mqtt["messageExpiryInterval"] ?? 0, (int)message.ExpiryS);
        }

        Assert.All(sends, operation => Assert.Contains(reader.All, message => operation.Covers(message.Topic) && message.Payload.Length > 0));
        string[] states = [.. _api.Document["components"]!["messages"]!["state"]!["payload"]!["enum"]!.AsArray().Select(state => (string)state!)];
        Assert.Equal(
            states.Except(notSeen).Order(), reader.All.Where(message => message.Topic == state).Select(message => message.Payload).Distinct().Order());
    }

    /// <summary>All there is, then nothing known, then a part that gives no number, then all again.</summary>
    private static IEnumerable<Assessment> Day()
    {
        Assessment whole = TestAssessment.At(Now, verdict: Verdict.Spray);
        ImmutableDictionary<Quantity, Reading> readings = whole.Snapshot.Readings.Add(
            Quantity.FilterPressureDrop, new Reading(Quantity.FilterPressureDrop, "filter", 82.5, 1, TimeSpan.Zero, ReadingQuality.Good, null));
        whole = whole with { Snapshot = whole.Snapshot with { Readings = readings } };
        yield return whole;

        yield return whole with
        {
            Verdict = Verdict.Wait,
            Air = null,
            Film = null,
            Snapshot = whole.Snapshot with
            {
                ClockProven = false,
                Readings = readings.ToImmutableDictionary(
                    entry => entry.Key,
                    entry => entry.Value with { Value = null, Quality = ReadingQuality.NoReading, Cause = "no acknowledge" }),
            },
        };

        yield return whole with
        {
            Verdict = Verdict.SlowDown,
            Film = whole.Film! with { TimeToSetS = null, RecommendedRetarderPct = null, LoadedRetarderPct = null },
            Snapshot = whole.Snapshot with
            {
                Readings = readings.SetItem(
                    Quantity.BoothTemperature,
                    new Reading(Quantity.BoothTemperature, "boothAir", double.NaN, double.PositiveInfinity, TimeSpan.Zero, ReadingQuality.OutOfRange, "no number")),
            },
        };

        yield return whole;
    }
}
