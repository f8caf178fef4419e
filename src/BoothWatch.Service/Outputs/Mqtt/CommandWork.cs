using BoothWatch.Service.Coat;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Outputs.Mqtt;

/// <summary>Has the commands obeyed, one after the other and off the connection, and publishes an answer to each.</summary>
internal sealed partial class CommandWork(
    CommandIntake intake,
    MqttLink link,
    MqttTopics topics,
    IOptions<BoothOptions> booth,
    TimeProvider time,
    ILogger<CommandWork> logger) : BackgroundService
{
    /// <summary>How long the broker queues an answer, s: as long as its command is timely.</summary>
    public const int AnswerExpiryS = 60;

    private const int LongestName = 64;
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        await Task.Yield();
        await foreach (ArrivedCommand command in intake.Arrived.ReadAllAsync(stoppingToken))
        {
            await AnswerAsync(command, Work(command), stoppingToken);
        }
    }

    private CommandReply Work(ArrivedCommand command)
    {
        if (command.Why is { } why)
        {
            return new CommandReply(why, MqttTrouble.Words(why));
        }

        CommandReply reply = command.Obeys!.Obey(command.Payload);
        if (reply.Why is { } later)
        {
            intake.CountRefusal(command.Name, later);
        }

        return reply;
    }

    private async Task AnswerAsync(ArrivedCommand command, CommandReply reply, CancellationToken stopping)
    {
        CommandAnswer answer = new(
            booth.Value.Shop,
            booth.Value.Name,
            command.Name[..Math.Min(command.Name.Length, LongestName)],
            command.Id,
            reply.Why is null,
            reply.Why,
            reply.Text,
            time.GetUtcNow().UtcDateTime);
        try
        {
            MqttSession session = await link.SessionAsync(Patience, stopping);
            await session.PublishAsync(topics.CommandAnswer, MqttJson.Write(answer), ContentTypes.Json, retain: false, AnswerExpiryS, stopping);
        }
        catch (MqttLinkException trouble)
        {
            LogNotAnswered(answer.Command, trouble.Message);
        }
    }

    [LoggerMessage(EventId = 1, Level = LogLevel.Warning, Message = "The command {Command} was dealt with, but the answer to it is lost: {Cause}")]
    private partial void LogNotAnswered(string command, string cause);
}
