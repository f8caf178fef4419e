using System.Globalization;
using System.Net;
using BoothWatch.Service.Outputs.Mqtt.Broker;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Outputs.Mqtt;

/// <summary>Gathers every error of the <c>mqtt</c> section, each with the key, the value, the range and an example.</summary>
public sealed class MqttOptionsValidator : IValidateOptions<MqttOptions>
{
    /// <inheritdoc/>
    public ValidateOptionsResult Validate(string? name, MqttOptions options)
    {
        List<string> errors = [];
        if (options.Use is not (MqttOptions.Embedded or MqttOptions.External or MqttOptions.Off))
        {
            errors.Add($"mqtt:use is {options.Use}; give embedded, external or off");
        }

        Level(errors, "homieRoot", options.HomieRoot, "homie", mayBeEmpty: false);
        Level(errors, "root", options.Root, "boothwatch", mayBeEmpty: false);
        Level(errors, "deviceId", options.DeviceId, "harbour-lane-corner", mayBeEmpty: true);
        if (options.Root == options.HomieRoot)
        {
            errors.Add($"mqtt:root is {options.Root}, and so is mqtt:homieRoot; give two different names, for example boothwatch and homie");
        }

        Range(errors, "expiryS", options.ExpiryS, 5, 3600, "60");
        Range(errors, "keepAliveS", options.KeepAliveS, 1, 300, "15");
        Range(errors, "answerWithinS", options.AnswerWithinS, 1, 60, "10");
        Range(errors, "sessionExpiryS", options.SessionExpiryS, 0, 86_400, "3600");
        Range(errors, "willDelayS", options.WillDelayS, 0, 300, "10");
        Range(errors, "firstRetryS", options.FirstRetryS, 0.1, 60, "0.5");
        Range(errors, "longestRetryS", options.LongestRetryS, 0.1, 600, "30");
        if (options.SessionExpiryS < options.WillDelayS)
        {
            errors.Add($"mqtt:sessionExpiryS is {options.SessionExpiryS}, below mqtt:willDelayS ({options.WillDelayS}), and the end of the session ends the delay; give at least {options.WillDelayS}, for example 3600");
        }

        if (options.LongestRetryS < options.FirstRetryS)
        {
            errors.Add(string.Create(CultureInfo.InvariantCulture,
                $"mqtt:longestRetryS is {options.LongestRetryS}, below mqtt:firstRetryS ({options.FirstRetryS}); give at least that, for example 30"));
        }

        if (options.Use == MqttOptions.Embedded)
        {
            CheckBroker(errors, options.Broker);
        }
        else if (options.Use == MqttOptions.External)
        {
            CheckExternal(errors, options);
        }

        return errors.Count == 0 ? ValidateOptionsResult.Success : ValidateOptionsResult.Fail(errors);
    }

    private static void CheckBroker(List<string> errors, BrokerOptions broker)
    {
        Port(errors, "broker:port", broker.Port);
        bool given = IPAddress.TryParse(broker.Address, out IPAddress? address);
        if (!given)
        {
            errors.Add($"mqtt:broker:address is {broker.Address}; give a numeric address of this machine, for example 127.0.0.1");
        }

        PasswordFile(errors, "broker:user", broker.User, "broker:passwordFile", broker.PasswordFile);
        if (given && !IPAddress.IsLoopback(address!) && (broker.User.Length == 0 || broker.PasswordFile.Length == 0))
        {
            errors.Add($"mqtt:broker:address is {broker.Address}, which others can reach; give mqtt:broker:user and mqtt:broker:passwordFile as well, or keep to 127.0.0.1");
        }
    }

    private static void CheckExternal(List<string> errors, MqttOptions options)
    {
        Port(errors, "port", options.Port);
        if (Uri.CheckHostName(options.Host) == UriHostNameType.Unknown)
        {
            errors.Add($"mqtt:host is \"{options.Host}\"; give the name or address of the broker without scheme or port, for example broker.lan");
        }

        PasswordFile(errors, "user", options.User, "passwordFile", options.PasswordFile);
        ReadableFile(errors, "tls:caFile", options.Tls.CaFile);
        ReadableFile(errors, "tls:certificateFile", options.Tls.CertificateFile);
        ReadableFile(errors, "tls:keyFile", options.Tls.KeyFile);
        if ((options.Tls.CertificateFile.Length == 0) != (options.Tls.KeyFile.Length == 0))
        {
            errors.Add("mqtt:tls:certificateFile and mqtt:tls:keyFile belong together; give both or neither");
        }

        bool anyFile = options.Tls.CaFile.Length + options.Tls.CertificateFile.Length + options.Tls.KeyFile.Length > 0;
        if (anyFile && !options.Tls.Enabled)
        {
            errors.Add("mqtt:tls:enabled is false, but certificate files are named; set it to true, or leave them out");
        }
    }

    private static void PasswordFile(List<string> errors, string userKey, string user, string fileKey, string file)
    {
        ReadableFile(errors, fileKey, file);
        if (file.Length > 0 && user.Length == 0)
        {
            errors.Add($"mqtt:{fileKey} is named, but mqtt:{userKey} is empty; give the user as well, for example booth");
        }
    }

    private static void ReadableFile(List<string> errors, string key, string path)
    {
        if (path.Length > 0 && !File.Exists(path))
        {
            errors.Add($"mqtt:{key} is {path}, and there is no such file; give a file that this user may read, or leave it empty");
        }
    }

    private static void Level(List<string> errors, string key, string value, string example, bool mayBeEmpty)
    {
        if ((value.Length == 0 && !mayBeEmpty) || value.Length > TopicLevel.Longest || !value.All(TopicLevel.Allows))
        {
            errors.Add($"mqtt:{key} is \"{value}\"; give 1 to {TopicLevel.Longest} of a to z, 0 to 9 and hyphens, for example {example}");
        }
    }

    private static void Port(List<string> errors, string key, int port)
    {
        if (port is < 1 or > 65_535)
        {
            errors.Add($"mqtt:{key} is {port}; give a port from 1 to 65535, for example 1883");
        }
    }

    private static void Range(List<string> errors, string key, double value, double least, double most, string example)
    {
        if (!(value >= least && value <= most))
        {
            errors.Add(string.Create(CultureInfo.InvariantCulture, $"mqtt:{key} is {value}; give seconds from {least} to {most}, for example {example}"));
        }
    }
}
