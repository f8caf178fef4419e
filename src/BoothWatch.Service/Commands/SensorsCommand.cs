using System.CommandLine;
using System.Globalization;
using BoothWatch.Readings;
using BoothWatch.Service.Coat;
using BoothWatch.Service.Configuration;
using BoothWatch.Service.Sensors;
using BoothWatch.Verdicts;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Commands;

/// <summary><c>sensors</c>: asks every configured sensor once.</summary>
internal static class SensorsCommand
{
    private const string Indent = "               ";

    public static Command Build(Option<string?> config, CommandStreams streams)
    {
        var command = new Command("sensors", "Asks every configured sensor once and prints its reading, or why there is none and what to check. Exit code 0 when all answer, 1 when one does not. Stop a running BoothWatch first: two programs on one pin or bus disturb each other.");
        command.SetAction((parsed, _) => RunAsync(parsed.GetValue(config), streams));
        return command;
    }

    private static async Task<int> RunAsync(string? configPath, CommandStreams streams)
    {
        ConfigurationFile file = ConfigurationFile.Read(configPath);
        IReadOnlyList<string> errors = ConfigurationCheck.Errors(file);
        if (await ConfigCommand.ReportErrorsAsync(file, errors, streams.Error))
        {
            return ExitCode.Wrong;
        }

        await using ServiceProvider services = new ServiceCollection()
            .AddSingleton<IConfiguration>(file.Configuration)
            .AddSensing()
            .BuildServiceProvider();
        SensorsOptions options = services.GetRequiredService<IOptions<SensorsOptions>>().Value;
        TemperatureUnit unit = ((BoothOptions)ConfigurationSections.Bind(file.Configuration, typeof(BoothOptions))).Unit;
        var sensors = services.GetRequiredService<SensorSet>().ToDictionary(sensor => sensor.Name);
        bool allAnswer = true;
        foreach ((SensorRole role, SensorOptions wired) in options.All())
        {
            if (sensors.TryGetValue(role.Name, out ISensor? sensor))
            {
                allAnswer &= await ReportAsync(sensor, wired, unit, streams.Out);
            }
            else
            {
                await streams.Out.WriteLineAsync($"{role.Name,-13}  not fitted");
            }
        }

        return allAnswer ? ExitCode.Good : ExitCode.Failed;
    }

    private static async Task<bool> ReportAsync(ISensor sensor, SensorOptions wired, TemperatureUnit unit, TextWriter writer)
    {
        await writer.WriteLineAsync($"{sensor.Name,-13}  {sensor.Description}");
        SensorAnswer answer = sensor.Read();
        if (answer.NoReadingCause is { } cause)
        {
            await writer.WriteLineAsync($"{Indent}NO READING: {cause}");
            await writer.WriteLineAsync($"{Indent}check: {WhatToCheck(sensor.Name, wired)}");
            return false;
        }

        await writer.WriteLineAsync(Indent + string.Join(", ", answer.Samples.Select(sample => Describe(sample, unit))));
        return true;
    }

    internal static string Describe(Sample sample, TemperatureUnit unit) => string.Create(CultureInfo.InvariantCulture, $"{sample.Quantity switch
    {
        Quantity.BoothTemperature or Quantity.IntakeTemperature or Quantity.PieceTemperature => Degrees(sample, unit),
        Quantity.BoothHumidity or Quantity.IntakeHumidity => $"{sample.Value:0.0} %RH ±{sample.StandardUncertainty:0.0}",
        Quantity.StationPressure => $"{sample.Value / 100:0.0} hPa ±{sample.StandardUncertainty / 100:0.0}",
        Quantity.FilterPressureDrop => $"{sample.Value:0} Pa across the filter ±{sample.StandardUncertainty:0}",
        Quantity.ExhaustProof => sample.Value > 0 ? "exhaust proven" : "exhaust not proven",
        _ => $"{sample.Quantity} {sample.Value}",
    }}");

    private static string Degrees(Sample sample, TemperatureUnit unit) => string.Create(
        CultureInfo.InvariantCulture,
        $"{unit.FromCelsius(sample.Value):0.00} {unit.Symbol()} ±{unit.FromCelsiusDifference(sample.StandardUncertainty):0.00}");

    private static string WhatToCheck(string name, SensorOptions wired) => wired switch
    {
        { Source: "emulated" } when wired.Part != "typed" => "the part is emulated, so the scripted shop gives this fault (demo section of the configuration)",
        { Part: "typed" } => "measure the piece with a surface thermometer and type the value in on the page",
        { Part: "contact" } => $"that sensors:{name}:pin is the GPIO number (not the pin of the header), that no other program holds it, and that the service may use /dev/gpiochip*",
        _ => string.Create(CultureInfo.InvariantCulture, $"3.3 V and ground at the part, SDA and SCL not swapped, the bus switched on and open to the service (/dev/i2c-{wired.Bus}), and with 'i2cdetect -y {wired.Bus}' that the part shows at the address of sensors:{name}"),
    };
}
