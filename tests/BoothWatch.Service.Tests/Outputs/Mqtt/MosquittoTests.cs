using System.Diagnostics;
using System.Net;
using BoothWatch.Service.Outputs.Mqtt;
using BoothWatch.Service.Tests.Outages;
using BoothWatch.Service.Tests.Outputs.Series;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Tests.Outputs.Mqtt;

/// <summary>Against a real broker that is not ours.</summary>
public sealed class MosquittoTests : IDisposable
{
    private readonly JournalFolder _folder = new();

    private static DateTimeOffset Now => TimeProvider.System.GetUtcNow();

    public void Dispose() => _folder.Dispose();

    [MosquittoFact]
    public async Task Password_RightOrWrong_IsTakenOrExplained()
    {
        await using Mosquitto broker = new("allow_anonymous false", "password_file /dev/null");
        string hashes = Path.Combine(broker.Folder, "passwords");
        await File.WriteAllTextAsync(hashes, "");
        using (Process hash = Process.Start("mosquitto_passwd", ["-b", hashes, "booth", "open sesame"]))
        {
            await hash.WaitForExitAsync();
        }

        string configuration = Path.Combine(broker.Folder, "mosquitto.conf");
        await File.WriteAllTextAsync(configuration, (await File.ReadAllTextAsync(configuration)).Replace("/dev/null", hashes, StringComparison.Ordinal));
        await broker.StartAsync();
        string passwordFile = Path.Combine(_folder.Folder, "password");
        await File.WriteAllTextAsync(passwordFile, "wrong\n");
        await using MqttBooth booth = await MqttBooth.ExternalAsync(_folder, broker.Port, ("user", "booth"), ("passwordFile", passwordFile));

        booth.Tick(TestAssessment.At(Now));
        await Eventually.TrueAsync(() => booth.Health.IsFailing, "the wrong password is noticed");
        Assert.Contains("check mqtt:user and mqtt:passwordFile", booth.Health.LastError, StringComparison.Ordinal);

        // The file is read at every connect, so a mended password needs no restart.
        await File.WriteAllTextAsync(passwordFile, "open sesame\n");
        await Eventually.TrueAsync(() => booth.Connections == 1, "the right one is taken");
        await booth.PublishAsync(TestAssessment.At(Now));
        Assert.Equal("ready", (await MqttReader.KeptAsync(broker.Port, "booth", "open sesame"))[booth.Topics.State].Payload);
    }

    [MosquittoFact]
    public async Task Tls_WithOurAuthorityAndAClientCertificate_Connects()
    {
        await using Mosquitto broker = await SecureBrokerAsync(out TestCertificates authority);
        (string certificate, string key) = authority.Issue("booth");
        await using MqttBooth booth = await MqttBooth.ExternalAsync(
            _folder, broker.Port, ("tls:enabled", "true"), ("tls:caFile", authority.CaFile), ("tls:certificateFile", certificate), ("tls:keyFile", key));

        await booth.PublishAsync(TestAssessment.At(Now));

        Assert.Equal(1, booth.Connections);
    }

    [MosquittoFact]
    public async Task Tls_BrokerOfAnotherAuthority_IsNotTrusted()
    {
        await using Mosquitto broker = await SecureBrokerAsync(out TestCertificates authority);
        (string certificate, string key) = authority.Issue("booth");
        TestCertificates another = new(_folder.Folder, "another");
        await using MqttBooth booth = await MqttBooth.ExternalAsync(
            _folder, broker.Port, ("tls:enabled", "true"), ("tls:caFile", another.CaFile), ("tls:certificateFile", certificate), ("tls:keyFile", key));

        booth.Tick(TestAssessment.At(Now));

        await Eventually.TrueAsync(() => booth.Health.IsFailing, "it is refused");
        Assert.Contains("TLS failed", booth.Health.LastError, StringComparison.Ordinal);
        Assert.Equal(0, booth.Connections);
    }

    [MosquittoFact]
    public async Task Tls_BrokerThatIsNotWhoWeAskedFor_IsNotTrusted()
    {
        await using Mosquitto broker = await SecureBrokerAsync(out TestCertificates authority, IPAddress.Parse("192.0.2.1"));
        (string certificate, string key) = authority.Issue("booth");
        await using MqttBooth booth = await MqttBooth.ExternalAsync(
            _folder, broker.Port, ("tls:enabled", "true"), ("tls:caFile", authority.CaFile), ("tls:certificateFile", certificate), ("tls:keyFile", key));

        booth.Tick(TestAssessment.At(Now));

        await Eventually.TrueAsync(() => booth.Health.IsFailing, "it is refused");
        Assert.Equal(0, booth.Connections);
    }

    [MosquittoFact]
    public async Task Tls_WithoutOurCertificate_IsRefusedByTheBroker()
    {
        await using Mosquitto broker = await SecureBrokerAsync(out TestCertificates authority);
        await using MqttBooth booth = await MqttBooth.ExternalAsync(_folder, broker.Port, ("tls:enabled", "true"), ("tls:caFile", authority.CaFile));

        booth.Tick(TestAssessment.At(Now));

        await Eventually.TrueAsync(() => booth.Health.IsFailing, "it is refused");
        Assert.Equal(0, booth.Connections);
    }

    [MosquittoFact]
    public async Task Booth_ThatVanishes_IsLostAfterTheDelayAndItsReadingsExpire()
    {
        await using Mosquitto broker = await Mosquitto.StartAsync("allow_anonymous true");
        await using StallingProxy proxy = new(broker.Port);
        await using MqttReader reader = await MqttReader.ConnectAsync(broker.Port, "homie/5/+/$state");
        string device;
        await using (MqttBooth booth = await MqttBooth.ExternalAsync(
            _folder, proxy.Port, ("expiryS", "5"), ("willDelayS", "1"), ("keepAliveS", "1"), ("answerWithinS", "1"), ("firstRetryS", "60"), ("longestRetryS", "60")))
        {
            device = booth.Topics.Device;
            await booth.PublishAsync(TestAssessment.At(Now));
            proxy.Stall();

            await Eventually.TrueAsync(() => reader.Last(booth.Topics.State) == "lost", "the last will");
        }

        IReadOnlyDictionary<string, MqttReader.Heard> kept = await MqttReader.KeptAsync(broker.Port);
        for (int look = 0; look < 300 && kept.Keys.Any(topic => topic.StartsWith($"{device}/air", StringComparison.Ordinal)); look++)
        {
            await Task.Delay(TimeSpan.FromMilliseconds(100), TimeProvider.System);
            kept = await MqttReader.KeptAsync(broker.Port);
        }

        Assert.Equal([$"{device}/$description", $"{device}/$state"], kept.Keys.Where(topic => topic.StartsWith(device, StringComparison.Ordinal)).Order(StringComparer.Ordinal));
        Assert.Equal("lost", kept[$"{device}/$state"].Payload);
    }

    [MosquittoFact]
    public async Task Retained_AfterTheBrokerRestartedWhileTheBoothIsStopped_IsThereForANewReader()
    {
        await using Mosquitto broker = await Mosquitto.StartAsync("allow_anonymous true");
        MqttTopics topics;
        await using (MqttBooth booth = await MqttBooth.ExternalAsync(_folder, broker.Port, ("expiryS", "3600")))
        {
            await booth.PublishAsync(TestAssessment.At(Now, temperatureC: 18.75, verdict: Verdict.SlowDown));
            topics = booth.Topics;
        }

        IReadOnlyDictionary<string, MqttReader.Heard> before = await MqttReader.KeptAsync(broker.Port);
        await broker.StopAsync();
        await broker.StartAsync();
        IReadOnlyDictionary<string, MqttReader.Heard> after = await MqttReader.KeptAsync(broker.Port);

        Assert.Equal("disconnected", after[topics.State].Payload);
        Assert.Equal("18.75", after[topics.Property("air", "temperature")].Payload);
        Assert.Equal("slow down", after[topics.Property("verdict", "state")].Payload);
        Assert.Contains(topics.Assessment, after.Keys);
        Assert.Contains(topics.RecentVerdictChanges, after.Keys);
        Assert.Equal(
            before.Select(kept => (kept.Key, kept.Value.Payload)).Order(),
            after.Select(kept => (kept.Key, kept.Value.Payload)).Order());
    }

    private Task<Mosquitto> SecureBrokerAsync(out TestCertificates authority, IPAddress? address = null)
    {
        authority = new TestCertificates(_folder.Folder, "shop-authority");
        (string certificate, string key) = authority.Issue("broker", address ?? IPAddress.Loopback);
        return Mosquitto.StartAsync("allow_anonymous true", $"cafile {authority.CaFile}", $"certfile {certificate}", $"keyfile {key}", "require_certificate true");
    }
}
