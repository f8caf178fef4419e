using System.Globalization;
using System.Text.Json;
using BoothWatch.Jobs;
using BoothWatch.Service.Jobs;
using BoothWatch.Service.Outputs.Mqtt;
using BoothWatch.Service.Tests.Jobs;
using Microsoft.Extensions.DependencyInjection;

namespace BoothWatch.Service.Tests.Outputs.Mqtt;

/// <summary>The command that marks a coat, sent by a client that knows nothing of the service, to the whole service.</summary>
public sealed class CoatCommandTests
{
    private static DateTimeOffset Now => TimeProvider.System.GetUtcNow();

    [Fact]
    public async Task MarkCoat_OnTheRunningJob_BeginsAndEndsTheCoatAsTheButtonDoes()
    {
        int port = Mosquitto.FreePort();
        await using JobHost host = await JobHost.Start(("mqtt:broker:port", port.ToString(CultureInfo.InvariantCulture)));
        MqttTopics topics = host.Services.GetRequiredService<MqttTopics>();
        await Eventually.TrueAsync(() => host.Services.GetRequiredService<MqttLink>().Connections == 1, "connected");
        await using MqttReader reader = await MqttReader.ConnectAsync(port, topics.CommandAnswer);

        // Without a job there is nothing to mark.
        JsonElement refused = await SendAsync(reader, topics, "a1", Now);
        Assert.Equal((false, "not-now"), (refused.GetProperty("done").GetBoolean(), refused.GetProperty("refusal").GetString()));
        Assert.Contains("no job is running", refused.GetProperty("text").GetString(), StringComparison.Ordinal);

        JobStore store = host.Services.GetRequiredService<JobStore>();
        long id = host.Services.GetRequiredService<JobDesk>().Start(new JobDetails("guitar neck", "clear gloss", "touch-up"), EntrySource.Page).Id;
        JsonElement begun = await SendAsync(reader, topics, "a2", Now);
        Assert.True(begun.GetProperty("done").GetBoolean(), begun.ToString());
        Assert.Equal(JsonValueKind.Null, begun.GetProperty("refusal").ValueKind);
        Assert.Contains("begun", begun.GetProperty("text").GetString(), StringComparison.Ordinal);
        Assert.NotNull(store.Find(id)!.OpenCoat);

        // The same again, late, and to be kept by the broker: none of them ends the coat.
        await WriteAsync(reader, topics, "a2", Now);
        Assert.Equal("stale", (await SendAsync(reader, topics, "a3", Now.AddMinutes(-2))).GetProperty("refusal").GetString());
        await WriteAsync(reader, topics, "a4", Now, retain: true);
        await Eventually.TrueAsync(() => reader.All.Any(message => message.Payload.Contains("\"refusal\":\"retained\"", StringComparison.Ordinal)), "the retained one is refused");
        Assert.NotNull(store.Find(id)!.OpenCoat);

        JsonElement ended = await SendAsync(reader, topics, "a5", Now);
        Assert.Contains("ended", ended.GetProperty("text").GetString(), StringComparison.Ordinal);
        Job job = store.Find(id)!;
        Assert.Null(job.OpenCoat);
        Assert.Equal([EntrySource.Page, EntrySource.Mqtt, EntrySource.Mqtt], job.Entries.Select(entry => entry.By));
        CommandIntake intake = host.Services.GetRequiredService<CommandIntake>();
        Assert.Equal((1, 1, 1, 1), (
            intake.Refused(CommandRefusal.NotNow), intake.Refused(CommandRefusal.Repeated), intake.Refused(CommandRefusal.Stale), intake.Refused(CommandRefusal.Retained)));
        Assert.All(reader.All, answer => Assert.False(answer.IsRetained));
    }

    private static async Task<JsonElement> SendAsync(MqttReader reader, MqttTopics topics, string id, DateTimeOffset sent)
    {
        await WriteAsync(reader, topics, id, sent);
        JsonElement? answer = null;
        await Eventually.TrueAsync(() => (answer = AnswerTo(reader, id)) is not null, $"{id} is answered");
        return answer!.Value;
    }

    private static async Task WriteAsync(MqttReader reader, MqttTopics topics, string id, DateTimeOffset sent, bool retain = false) =>
        await reader.WriteAsync($"{topics.Command}/mark-coat", $$"""{"id":"{{id}}","time":"{{sent:O}}"}""", retain, expiryS: 60);

    private static JsonElement? AnswerTo(MqttReader reader, string id) => reader.All
        .Select(message => JsonDocument.Parse(message.Payload).RootElement)
        .Where(answer => answer.GetProperty("id").GetString() == id)
        .Cast<JsonElement?>()
        .FirstOrDefault();
}
