using BoothWatch.Service.Outputs.Mqtt;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Tests.Outputs.Mqtt;

public class MqttOptionsValidatorTests
{
    [Fact]
    public void Options_Defaults_AreGood() => Assert.True(Check(_ => { }).Succeeded);

    [Fact]
    public void Options_Default_BrokerIsInsideAndReachedFromThisMachineOnly()
    {
        MqttOptions options = new();

        Assert.Equal((MqttOptions.Embedded, "127.0.0.1", 1883), (options.Use, options.Broker.Address, options.Broker.Port));
    }

    [Fact]
    public void Options_EachWrong_IsNamedWithItsKeyAndAFix()
    {
        string[] errors = [.. Check(options =>
        {
            options.Broker.Port = 0;
            options.Broker.Address = "localhost";
            options.HomieRoot = "Homie/x";
            options.ExpiryS = 1;
            options.KeepAliveS = double.NaN;
            options.WillDelayS = 200;
            options.SessionExpiryS = 100;
        }).Failures!];

        Assert.Equal(6, errors.Length);
        Assert.Contains(errors, e => e.StartsWith("mqtt:broker:port is 0; give a port from 1 to 65535", StringComparison.Ordinal));
        Assert.Contains(errors, e => e.StartsWith("mqtt:broker:address is localhost; give a numeric address", StringComparison.Ordinal));
        Assert.Contains(errors, e => e.StartsWith("mqtt:homieRoot is \"Homie/x\"", StringComparison.Ordinal));
        Assert.Contains("mqtt:expiryS is 1; give seconds from 5 to 3600, for example 60", errors);
        Assert.Contains(errors, e => e.StartsWith("mqtt:keepAliveS is NaN", StringComparison.Ordinal));
        Assert.Contains(errors, e => e.StartsWith("mqtt:sessionExpiryS is 100, below mqtt:willDelayS (200)", StringComparison.Ordinal));
    }

    [Fact]
    public void Broker_OpenToTheNetworkWithoutAPassword_IsRefused() =>
        Assert.Contains("mqtt:broker:user", Assert.Single(Check(options => options.Broker.Address = "0.0.0.0").Failures!), StringComparison.Ordinal);

    [Fact]
    public void External_CertificateWithoutKeyAndWithoutTls_IsRefused()
    {
        string[] errors = [.. Check(options =>
        {
            options.Use = MqttOptions.External;
            options.Host = "mqtt://broker.lan";
            options.Tls.CertificateFile = "/no/such/file";
        }).Failures!];

        Assert.Contains(errors, e => e.StartsWith("mqtt:host is \"mqtt://broker.lan\"", StringComparison.Ordinal));
        Assert.Contains(errors, e => e.StartsWith("mqtt:tls:certificateFile is /no/such/file", StringComparison.Ordinal));
        Assert.Contains(errors, e => e.Contains("belong together", StringComparison.Ordinal));
        Assert.Contains(errors, e => e.StartsWith("mqtt:tls:enabled is false", StringComparison.Ordinal));
    }

    [Fact]
    public void Off_WhatTheBrokersNeed_IsNotLookedAt() => Assert.True(Check(options => (options.Use, options.Broker.Port, options.Host) = ("off", 0, "")).Succeeded);

    private static ValidateOptionsResult Check(Action<MqttOptions> change)
    {
        MqttOptions options = new();
        change(options);
        return new MqttOptionsValidator().Validate(null, options);
    }
}
