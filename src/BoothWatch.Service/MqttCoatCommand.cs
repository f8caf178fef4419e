using System.Text.Json;
using BoothWatch.Jobs;
using BoothWatch.Service.Jobs;
using BoothWatch.Service.Outputs.Mqtt;
using BoothWatch.Service.Outputs.Series;

namespace BoothWatch.Service;

/// <summary>The MQTT command that does what a press of the button at the booth does; here, because an output may not know the jobs.</summary>
internal sealed partial class MqttCoatCommand(JobDesk desk, ILogger<MqttCoatCommand> logger) : IMqttCommand
{
    public string Name => "mark-coat";

    public CommandReply Obey(JsonElement command)
    {
        try
        {
            if (desk.Press(EntrySource.Mqtt) is not { } done)
            {
                return CommandReply.NotNow("no job is running: start one on the page");
            }

            LogMarked(done);
            return CommandReply.Done(done);
        }
        catch (Exception refused) when (refused is JobRuleException or JournalException)
        {
            LogNotMarked(refused.Message);
            return CommandReply.NotNow(refused.Message);
        }
    }

    [LoggerMessage(1, LogLevel.Information, "Command mark-coat: {Done}")]
    private partial void LogMarked(string done);

    [LoggerMessage(2, LogLevel.Error, "Command mark-coat, but nothing was marked: {Problem}")]
    private partial void LogNotMarked(string problem);
}
