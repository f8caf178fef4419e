using System.Text;
using System.Text.Json;
using BoothWatch.Service.Coat;
using BoothWatch.Service.Outputs.Mqtt;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;

namespace BoothWatch.Service.Tests.Outputs.Mqtt;

public class CommandIntakeTests
{
    private const string Good = """{"id":"a1","time":"2026-09-07T08:00:30Z"}""";

    private readonly MqttTopics _topics = new(new MqttOptions(), new BoothOptions());

    [Theory]
    [InlineData("acknowledge-alert", Good, false, CommandRefusal.NotObeyedYet)]
    [InlineData("mark-coat", Good, false, CommandRefusal.NotObeyedYet)]
    [InlineData("mark-coat", Good, true, CommandRefusal.Retained)]
    [InlineData("start-fan", Good, false, CommandRefusal.Unknown)]
    [InlineData("mark-coat/now", Good, false, CommandRefusal.Unknown)]
    [InlineData("", Good, false, CommandRefusal.Unknown)]
    [InlineData("mark-coat", "", false, CommandRefusal.Malformed)]
    [InlineData("mark-coat", "spray", false, CommandRefusal.Malformed)]
    [InlineData("mark-coat", "[]", false, CommandRefusal.Malformed)]
    [InlineData("mark-coat", """{"id":"","time":"2026-09-07T08:00:30Z"}""", false, CommandRefusal.Malformed)]
    [InlineData("mark-coat", """{"id":7,"time":"2026-09-07T08:00:30Z"}""", false, CommandRefusal.Malformed)]
    [InlineData("mark-coat", """{"id":"a1","time":"yesterday"}""", false, CommandRefusal.Malformed)]
    [InlineData("mark-coat", """{"id":"a1","time":"2026-09-07T07:58:59Z"}""", false, CommandRefusal.Stale)]
    [InlineData("mark-coat", """{"id":"a1","time":"2026-09-07T08:01:01Z"}""", false, CommandRefusal.Stale)]
    public void Command_IsRefusedAndCountedByReason(string name, string payload, bool retained, CommandRefusal expected)
    {
        CommandIntake intake = new(_topics, new FakeTimeProvider(TestAssessment.Start), NullLogger<CommandIntake>.Instance);

        intake.Take(new MqttArrival($"{_topics.Command}/{name}", Encoding.UTF8.GetBytes(payload), retained));

        Assert.All(Enum.GetValues<CommandRefusal>(), why => Assert.Equal(why == expected ? 1 : 0, intake.Refused(why)));
    }

    [Fact]
    public void Command_LongerThanAllowed_IsRefusedUnread()
    {
        CommandIntake intake = new(_topics, new FakeTimeProvider(TestAssessment.Start), NullLogger<CommandIntake>.Instance);

        intake.Take(new MqttArrival($"{_topics.Command}/mark-coat", new byte[CommandIntake.LongestPayload + 1], false));

        Assert.Equal(1, intake.Refused(CommandRefusal.TooLong));
    }

    [Theory]
    [InlineData("""{"id":"a1","time":"2026-09-07T08:00:30Z","alert":"0198"}""", null)]
    [InlineData("""{"id":"a1","time":"2026-09-07T08:00:30Z"}""", CommandRefusal.Malformed)]
    [InlineData("""{"id":"a1","time":"2026-09-07T07:58:30Z","alert":"0198"}""", CommandRefusal.Stale)]
    public void Command_ThatSomethingObeys_IsHandedOnWhenItIsTimelyAndWhole(string payload, CommandRefusal? expected)
    {
        Acknowledgement command = new();
        CommandIntake intake = new(_topics, new FakeTimeProvider(TestAssessment.Start), NullLogger<CommandIntake>.Instance, [command]);

        intake.Take(new MqttArrival($"{_topics.Command}/acknowledge-alert", Encoding.UTF8.GetBytes(payload), IsRetained: false));

        Assert.Equal(expected is null ? "0198" : null, command.Alert);
        Assert.All(Enum.GetValues<CommandRefusal>(), why => Assert.Equal(why == expected ? 1 : 0, intake.Refused(why)));
    }

    private sealed class Acknowledgement : IMqttCommand
    {
        public string? Alert { get; private set; }

        public string Name => "acknowledge-alert";

        public bool Obey(JsonElement command)
        {
            Alert = command.TryGetProperty("alert", out JsonElement alert) ? alert.GetString() : null;
            return Alert is not null;
        }
    }
}
