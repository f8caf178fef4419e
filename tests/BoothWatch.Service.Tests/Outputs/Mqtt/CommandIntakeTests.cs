using System.Text;
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
    public void Command_ThatIsTimelyAndWhole_IsHandedOnOnce()
    {
        FakeTimeProvider time = new(TestAssessment.Start);
        CommandIntake intake = new(_topics, time, NullLogger<CommandIntake>.Instance, [new StubCommand()]);

        intake.Take(Marking("a1", time));
        time.Advance(TimeSpan.FromSeconds(50));
        intake.Take(Marking("a1", time));
        intake.Take(Marking("a2", time));

        Assert.Equal(["a1", "a2"], Arrived(intake).Select(command => command.Id));
        Assert.Equal(1, intake.Refused(CommandRefusal.Repeated));
    }

    [Fact]
    public void Command_OfAFlood_IsRefusedUntilTheFloodIsPast()
    {
        FakeTimeProvider time = new(TestAssessment.Start);
        CommandIntake intake = new(_topics, time, NullLogger<CommandIntake>.Instance, [new StubCommand()]);
        for (int i = 0; i < 10 * CommandIntake.MostTaken; i++)
        {
            intake.Take(Marking($"a{i}", time));
        }

        Assert.Equal(CommandIntake.MostTaken, Arrived(intake).Count(command => command.Why is null));
        Assert.Equal(9 * CommandIntake.MostTaken, intake.Refused(CommandRefusal.TooMany));
        time.Advance(TimeSpan.FromMinutes(3));
        intake.Take(Marking("b", time));
        Assert.Null(Assert.Single(Arrived(intake)).Why);
    }

    [Fact]
    public void Command_LongerThanAllowed_IsRefusedUnread()
    {
        CommandIntake intake = new(_topics, new FakeTimeProvider(TestAssessment.Start), NullLogger<CommandIntake>.Instance);

        intake.Take(new MqttArrival($"{_topics.Command}/mark-coat", new byte[CommandIntake.LongestPayload + 1], false));

        Assert.Equal(1, intake.Refused(CommandRefusal.TooLong));
    }

    private MqttArrival Marking(string id, FakeTimeProvider time) => new(
        $"{_topics.Command}/mark-coat", Encoding.UTF8.GetBytes($$"""{"id":"{{id}}","time":"{{time.GetUtcNow():O}}"}"""), IsRetained: false);

    private static List<ArrivedCommand> Arrived(CommandIntake intake)
    {
        List<ArrivedCommand> all = [];
        while (intake.Arrived.TryRead(out ArrivedCommand? command))
        {
            all.Add(command);
        }

        return all;
    }
}
