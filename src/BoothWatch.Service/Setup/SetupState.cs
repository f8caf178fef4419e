using System.Globalization;
using BoothWatch.Film;
using BoothWatch.Readings;
using BoothWatch.Service.Assessing;
using BoothWatch.Service.Configuration;
using BoothWatch.Service.Materials;
using BoothWatch.Service.Outputs.Alerts;
using BoothWatch.Service.Outputs.Light;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Sensors;
using BoothWatch.Verdicts;
using Microsoft.Extensions.Hosting.Systemd;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Setup;

/// <summary>Gathers how far the booth is set up, from the running configuration, the file, the last readings and what people confirmed.</summary>
internal sealed class SetupState(
    ConfigurationFile running,
    ConfigurationEditor editor,
    Confirmations confirmations,
    MaterialCatalogue materials,
    IEnumerable<ISensor> sensors,
    SnapshotBoard board,
    AlertDesk alerts,
    Outbox outbox,
    LampTrials trials,
    LampCommand lampCommand,
    IOptions<LightOptions> light)
{
    // Those that the page writes.
    private static readonly string[] SensorKeys = ["part", "source", "bus", "address", "stationPressure", "pin"];

    /// <summary>How it stands now.</summary>
    /// <exception cref="IOException">The configuration file cannot be read.</exception>
    public SetupAnswer Now()
    {
        (ConfigurationFile? file, SetupFile words) = FileNow();
        IReadOnlyDictionary<string, object?> runs = SettingValues.Of(running.Configuration);
        IConfiguration present = (file ?? running).Configuration;
        IReadOnlyDictionary<string, object?> stands = SettingValues.Of(present);
        SetupLamp[] lamps = [.. Lamps()];
        string[] waiting = [.. Waiting(running.Configuration, present)];
        bool isUnit = SystemdHelpers.IsSystemdService();
        return new SetupAnswer
        {
            File = words,
            IsDemo = sensors.Any(sensor => sensor.IsEmulated),
            Settings = [.. SettingValues.Keys.Select(key => new SetupSetting(key, stands[key], runs[key], editor.IsFromEnvironment(key)))],
            Roles = [.. RolesOf(present).Select(RoleOf)],
            FileLightSource = (string?)SettingValues.Held(present, SensorPlan.LightKey) ?? "",
            FileProving = SettingValues.Held(present, SensorPlan.ProvingKey) is true,
            Waiting = waiting,
            Choices = new SetupChoices(
                [.. Enum.GetNames<CoatKind>().Select(name => name.ToLowerInvariant())],
                [.. materials.Lacquers.Keys.Order(StringComparer.Ordinal)],
                [.. materials.Thinners.Keys.Order(StringComparer.Ordinal)],
                [.. materials.Retarders.Keys.Order(StringComparer.Ordinal)],
                [.. materials.Substrates.Keys.Order(StringComparer.Ordinal)]),
            Steps = [Sensors(waiting), Booth(stands), Materials(stands), Light(lamps), Alerts()],
            Lamps = lamps,
            LightSource = light.Value.Source,
            LampsFirst = LampCommand.First(isUnit),
            LampCommands = lampCommand.Lines(isUnit),
            Restart = isUnit ? "sudo systemctl restart boothwatch" : "stop it with Ctrl-C and start it again",
        };
    }

    /// <summary>What a confirmation of an id is about now; null when there is no such thing to confirm.</summary>
    /// <exception cref="IOException">The configuration file cannot be read.</exception>
    public string? SubjectOf(string id)
    {
        (ConfigurationFile? file, _) = FileNow();
        IReadOnlyDictionary<string, object?> stands = SettingValues.Of((file ?? running).Configuration);
        return id switch
        {
            "booth" => BoothSubject(stands),
            "materials" => CoatSubject(stands),
            _ => light.Value.Pins().Where(pin => pin.Pin is not null && IdOf(pin.Key) == id).Select(pin => light.Value.WiringOf(pin.Pin!.Value)).FirstOrDefault(),
        };
    }

    private (ConfigurationFile? File, SetupFile Words) FileNow()
    {
        if (editor.FilePath is { } path && !File.Exists(path))
        {
            return (null, new SetupFile(path, "", editor.Refusal, [], editor.IsBesideProgram, [], null));
        }

        (ConfigurationFile file, string version) = editor.Present();
        IReadOnlyList<string> errors = ConfigurationCheck.Errors(file);
        SetupUndo? undo = editor.NextUndo() is { } next ? new SetupUndo(next.Time, next.Changes) : null;
        return (file.Errors.Count > 0 ? null : file, new SetupFile(file.Path, version, editor.Refusal, editor.Unlocking(SystemdHelpers.IsSystemdService()), editor.IsBesideProgram, errors, undo));
    }

    private static IEnumerable<(SensorRole Role, SensorOptions Options)> RolesOf(IConfiguration configuration)
    {
        try
        {
            return ((SensorsOptions)ConfigurationSections.Bind(configuration, typeof(SensorsOptions))).All();
        }
        catch (InvalidOperationException)
        {
            return []; // something in the section cannot be read, and the check says what
        }
    }

    private static SetupRole RoleOf((SensorRole Role, SensorOptions Options) sensor)
    {
        ISensorPart? part = SensorParts.Find(sensor.Options.Part ?? "");
        return new SetupRole(
            sensor.Role.Name,
            sensor.Options.Part ?? "",
            sensor.Options.Source?.ToLowerInvariant() ?? "",
            part is I2cPart ? sensor.Options.Bus : null,
            (part as I2cPart)?.AddressOf(sensor.Options) is { } address ? string.Create(CultureInfo.InvariantCulture, $"0x{address:X2}") : null,
            sensor.Role == SensorRole.Exhaust ? sensor.Options.Pin : null,
            part?.IsEmulated(sensor.Options));
    }

    // What this page can change and the next start will find changed.
    private static IEnumerable<string> Waiting(IConfiguration runs, IConfiguration stands)
    {
        string[] keys =
        [
            .. SettingValues.Keys,
            .. SensorRole.All.SelectMany(role => SensorKeys, (role, key) => $"{SensorsOptions.Section}:{role.Name}:{key}"),
            SensorPlan.ProvingKey,
            SensorPlan.LightKey,
        ];
        IReadOnlyDictionary<string, object?> before = SettingValues.Held(runs, keys);
        IReadOnlyDictionary<string, object?> after = SettingValues.Held(stands, keys);
        return keys.Where(key => !Equals(before[key], after[key]));
    }

    private SetupStep Sensors(string[] waiting)
    {
        if (waiting.Any(key => key.StartsWith($"{SensorsOptions.Section}:", StringComparison.Ordinal)))
        {
            return new("sensors", false, "what the file says takes effect at the next start");
        }

        BoothSnapshot snapshot = board.Take();
        Reading[] readings = [.. snapshot.Readings.Values, .. snapshot.Others];
        ISensor[] all = [.. sensors];
        string[] failing = [.. all.Where(sensor => !IsGood(sensor)).Select(sensor => sensor.Name)];
        int emulated = all.Count(sensor => sensor.IsEmulated);
        string count = $"{all.Length} {(all.Length == 1 ? "sensor" : "sensors")}";
        return failing.Length > 0 ? new("sensors", false, $"{failing.Length} of {count} without a good reading: {string.Join(", ", failing)}")
            : emulated > 0 ? new("sensors", false, $"{count}, of which {emulated} measure the scripted shop and not your booth")
            : new("sensors", all.Length > 0, $"{count}, and all answer");

        bool IsGood(ISensor sensor)
        {
            Reading[] own = [.. readings.Where(reading => reading.Sensor == sensor.Name)];
            return own.Length > 0 && own.All(reading => reading.IsGood);
        }
    }

    private SetupStep Booth(IReadOnlyDictionary<string, object?> values)
    {
        string named = $"{values["booth:shop"]}, booth {values["booth:name"]}";
        return confirmations.Of("booth", BoothSubject(values)) is null ? new("booth", false, $"{named}: nobody has said yet that this is right") : new("booth", true, named);
    }

    private SetupStep Materials(IReadOnlyDictionary<string, object?> values)
    {
        string cup = $"{values["coat:kind"]} coat, {values["coat:thinner"]}, {values["coat:retarder"]}";
        return confirmations.Of("materials", CoatSubject(values)) is null ? new("materials", false, $"{cup}: nobody has said yet that this is right") : new("materials", true, cup);
    }

    private SetupStep Light(SetupLamp[] lamps)
    {
        string[] open = [.. lamps.Where(lamp => lamp.Confirmed is null).Select(lamp => lamp.Id)];
        return SignalSourceWord.Parse(light.Value.Source) != SignalSource.Real ? new("light", false, "light:source is emulated: no lamp lights up")
            : open.Length > 0 ? new("light", false, $"not seen yet: {string.Join(", ", open)}")
            : new("light", true, "every lamp was seen on its pin");
    }

    private SetupStep Alerts()
    {
        try
        {
            string[] used = [.. alerts.Channels.Where(channel => channel.OffBecause is null && channel.Targets().Count > 0).Select(channel => channel.Name)];
            string[] untried = [.. used.Where(name => outbox.RecordOf(name).LastSuccess is null)];
            return used.All(name => name == "mqtt") ? new("alerts", false, used.Length == 0 ? "no way is set up" : "none by phone, mail or webhook; MQTT alone tells nobody by itself")
                : untried.Length > 0 ? new("alerts", false, $"nothing handed over yet by {string.Join(", ", untried)}")
                : new("alerts", true, $"handed over by {string.Join(", ", used)}");
        }
        catch (JournalException trouble)
        {
            return new("alerts", false, trouble.Message);
        }
    }

    private IEnumerable<SetupLamp> Lamps() => light.Value.Pins()
        .Where(pin => pin.Pin is not null)
        .Select(pin => (Id: IdOf(pin.Key), Pin: pin.Pin!.Value))
        .Select(pin => new SetupLamp(pin.Id, pin.Pin, Shows(pin.Id), confirmations.Of(pin.Id, light.Value.WiringOf(pin.Pin)), trials.Of(pin.Id, light.Value.WiringOf(pin.Pin))));

    private static string Shows(string id) => id switch
    {
        "green" => $"{Verdict.Spray.Word()}: {Rhythm(Verdict.Spray)}",
        "yellow" => $"{Verdict.SlowDown.Word()}: {Rhythm(Verdict.SlowDown)}",
        "red" => $"{Verdict.Wait.Word()}: steady",
        _ => $"{LightPatterns.BeepFor(Verdict.SlowDown).Count} beep for {Verdict.SlowDown.Word()}, {LightPatterns.BeepFor(Verdict.Wait).Count} for {Verdict.Wait.Word()}",
    };

    private static string Rhythm(Verdict verdict)
    {
        LampPattern pattern = LightPatterns.Of(verdict);
        return string.Create(CultureInfo.InvariantCulture, $"{pattern.On.TotalSeconds:0.#} s on, {pattern.Off.TotalSeconds:0.#} s off");
    }

    private static string BoothSubject(IReadOnlyDictionary<string, object?> values) => $"{values["booth:shop"]} / {values["booth:name"]}";

    private static string CoatSubject(IReadOnlyDictionary<string, object?> values) =>
        string.Join("; ", SettingValues.OfCoat.Select(key => string.Create(CultureInfo.InvariantCulture, $"{key} = {values[key]}")));

    // light:greenPin is the green lamp.
    private static string IdOf(string key) => key[(key.IndexOf(':', StringComparison.Ordinal) + 1)..].Replace("Pin", "", StringComparison.Ordinal);
}
