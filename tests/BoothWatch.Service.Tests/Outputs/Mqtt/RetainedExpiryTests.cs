using System.Buffers;
using BoothWatch.Service.Outputs.Mqtt.Broker;
using Microsoft.Extensions.Time.Testing;
using MQTTnet;

namespace BoothWatch.Service.Tests.Outputs.Mqtt;

public class RetainedExpiryTests
{
    private readonly FakeTimeProvider _time = new(TestAssessment.Start);
    private readonly RetainedExpiry _expiry;

    public RetainedExpiryTests() => _expiry = new RetainedExpiry(_time);

    [Fact]
    public void Message_NotRenewed_ExpiresOnce()
    {
        Note(expiryS: 10);
        _time.Advance(TimeSpan.FromSeconds(9.9));
        Assert.Empty(_expiry.TakeExpired());
        _time.Advance(TimeSpan.FromSeconds(0.1));

        Assert.Equal(["a"], _expiry.TakeExpired());
        Assert.Empty(_expiry.TakeExpired());
    }

    [Fact]
    public void Message_RenewedOrClearedOrForEver_DoesNotExpire()
    {
        Note(expiryS: 10, topic: "renewed");
        Note(expiryS: 10, topic: "cleared");
        Note(expiryS: 10, topic: "for-ever");
        _time.Advance(TimeSpan.FromSeconds(6));
        Note(expiryS: 10, topic: "renewed");
        Note(expiryS: 10, topic: "cleared", payload: []);
        Note(expiryS: 0, topic: "for-ever");
        _time.Advance(TimeSpan.FromSeconds(6));

        Assert.Empty(_expiry.TakeExpired());
    }

    private void Note(uint expiryS, string topic = "a", byte[]? payload = null) => _expiry.Note(new MqttApplicationMessage
    {
        Topic = topic,
        Payload = new ReadOnlySequence<byte>(payload ?? [1]),
        Retain = true,
        MessageExpiryInterval = expiryS,
    });
}
