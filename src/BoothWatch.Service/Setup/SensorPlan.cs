using System.Text.Json;
using BoothWatch.Service.Configuration;
using BoothWatch.Service.Outputs.Light;
using BoothWatch.Service.Sensors;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Setup;

/// <summary>What a person chose for the sensors and the light, as settings of the file; what it means for the verdict, in words.</summary>
/// <param name="Choices">One choice a role; roles that are not among them stay as they are.</param>
/// <param name="LightSource">emulated or real; null leaves it.</param>
/// <param name="Proving">Whether parts are proved one at a time; null leaves it.</param>
internal sealed record SensorPlan(IReadOnlyList<SensorChoice> Choices, string? LightSource, bool? Proving)
{
    private const string StationPressure = "stationPressure";

    /// <summary>The key of the light's source.</summary>
    public const string LightKey = $"{LightOptions.Section}:source";

    /// <summary>The key that lets real and emulated parts stand side by side.</summary>
    public const string ProvingKey = $"{SensorsOptions.Section}:proving";

    /// <summary>Full keys and values, on top of a configuration.</summary>
    public IReadOnlyDictionary<string, JsonElement> Settings(IConfiguration present)
    {
        Dictionary<string, JsonElement> settings = new(StringComparer.OrdinalIgnoreCase);
        foreach ((string key, object value) in Choices.SelectMany(choice => choice.Settings()))
        {
            settings[key] = JsonSerializer.SerializeToElement(value);
        }

        foreach ((string role, bool gives) in PressureOf(present))
        {
            settings[$"{SensorsOptions.Section}:{role}:{StationPressure}"] = JsonSerializer.SerializeToElement(gives);
        }

        if (LightSource is not null)
        {
            settings[LightKey] = JsonSerializer.SerializeToElement(LightSource);
        }

        if (Proving is { } proving)
        {
            settings[ProvingKey] = JsonSerializer.SerializeToElement(proving);
        }

        return settings;
    }

    /// <summary>What the verdict will be held back by, and what else a person should know before this is written.</summary>
    /// <param name="after">The configuration as it would be.</param>
    public static IEnumerable<string> Notes(IConfiguration after)
    {
        var sensors = (SensorsOptions)ConfigurationSections.Bind(after, typeof(SensorsOptions));
        var policy = (VerdictPolicy)ConfigurationSections.Bind(after, typeof(VerdictPolicy));
        var light = (LightOptions)ConfigurationSections.Bind(after, typeof(LightOptions));
        if (sensors.BoothAir.Part == SensorsOptions.None && sensors.BoothAirCheck.Part == SensorsOptions.None)
        {
            yield return "Nothing measures the air in the booth: the verdict stays at wait.";
        }

        if (sensors.Piece.Part == SensorsOptions.None && policy.RequirePieceTemperature)
        {
            yield return "Nothing measures the piece: the verdict stays at wait while verdict:requirePieceTemperature is true. It can be measured by hand and typed in.";
        }

        if (sensors.Exhaust.Part == SensorsOptions.None)
        {
            yield return policy.RequireExhaustProof
                ? "Nothing proves the exhaust: the verdict stays at wait while verdict:requireExhaustProof is true. Fit a sail switch or relay; false, by hand in the file, allows slow down at most."
                : "Nothing proves the exhaust: the verdict is slow down at most.";
        }

        if (sensors.Proving)
        {
            yield return "Parts are being proved one at a time (sensors:proving): the verdict stays at wait until it is false again.";
        }

        if (sensors.KeysWhere(emulated: true).Length > 0)
        {
            yield break;
        }

        yield return "With every part real, readings, jobs and coats go to the booth's own journal; those of the demo stay in theirs.";
        if (SignalSourceWord.Parse(light.Source) != SignalSource.Real)
        {
            yield return "No lamp lights up: light:source is emulated.";
        }
    }

    // Only one sensor may give the station pressure: whoever does so already and stays, else the first that can. Who was told not to keeps
    // silent only where nobody gave it; beside another one it had to.
    private IEnumerable<(string Role, bool Gives)> PressureOf(IConfiguration present)
    {
        var before = (SensorsOptions)ConfigurationSections.Bind(present, typeof(SensorsOptions));
        Dictionary<string, SensorOptions> was = before.All().ToDictionary(sensor => sensor.Role.Name, sensor => sensor.Options);
        bool isGiven = before.All().Any(sensor => Choices.All(choice => choice.Role != sensor.Role) && Gives(sensor.Options.Part, sensor.Options));
        bool wasGiven = before.All().Any(sensor => Gives(sensor.Options.Part, sensor.Options));
        foreach (SensorChoice choice in Choices
            .Where(choice => Gives(choice.Part, new SensorOptions()))
            .OrderBy(choice => was[choice.Role.Name].Part != choice.Part)
            .ThenBy(choice => !was[choice.Role.Name].StationPressure))
        {
            SensorOptions own = was[choice.Role.Name];
            bool declines = own.Part == choice.Part && !own.StationPressure && !wasGiven;
            yield return (choice.Role.Name, !isGiven && !declines);
            isGiven |= !declines;
        }
    }

    private static bool Gives(string part, SensorOptions options) => SensorParts.Find(part)?.GivesPressure(options) == true;
}
