using System.Device.Gpio;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text.Json;
using BoothWatch.Service.Commands;
using BoothWatch.Service.Configuration;
using BoothWatch.Service.Sensors;
using BoothWatch.Service.Tests.Jobs;
using BoothWatch.Service.Tests.Outputs.Light;
using BoothWatch.Service.Tests.Outputs.Mqtt;

namespace BoothWatch.Service.Tests.Setup;

/// <summary>From the shipped configuration, all emulated, to a booth with real parts and a light that was looked at, without a text editor.</summary>
public sealed class FirstRunTests : IDisposable
{
    private static readonly TimeSpan Each = TimeSpan.FromSeconds(2);

    private readonly ConfigFolder _folder = new();
    private readonly FakeBoard _board = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task FirstRun_WritesTheFoundSensors_AndEndsWithARealBoothThatIsSetUp()
    {
        await File.WriteAllTextAsync(_folder.JsonPath, _folder.Text
            .Replace("\"folder\": \"\"", $"\"folder\": {JsonSerializer.Serialize(_folder.Folder)}", StringComparison.Ordinal)
            .Replace("http://127.0.0.1:5080\"", $"http://127.0.0.1:{FreePort()}\"", StringComparison.Ordinal));
        string before = _folder.Text;
        await using (JobHost host = await Start())
        {
            JsonElement[] found = [.. (await host.Post("/api/setup/scan", "{}")).Body.GetProperty("lines").EnumerateArray().Where(line => Text(line, "source") == "real")];
            Assert.Equal(["sht4x at 0x44: boothAir boothAirCheck intakeAir", "mlx90614 at 0x5A: piece"], found.Select(line =>
                $"{Text(line, "part")} at {Text(line, "address")}: {string.Join(' ', line.GetProperty("roles").EnumerateArray().Select(role => role.GetString()))}"));

            // One part alone would stand beside emulated ones.
            string one = await Body(host, """[{ "role": "boothAir", "part": "sht4x", "source": "real", "bus": 1, "address": "0x44" }]""");
            (int status, JsonElement plan) = await host.Post("/api/setup/sensors/preview", one);
            Assert.Equal(200, status);
            string why = "sensors:intakeAir, sensors:piece, sensors:exhaust, sensors:filter are emulated beside sensors:boothAir, which is real; "
                + "give each the source real or the part none, or set sensors:proving to true while you prove parts (the verdict then stays at wait)";
            Assert.Equal([why], Texts(plan, "errors"));
            (status, JsonElement refused) = await host.Post("/api/setup/sensors", one);
            Assert.Equal((400, why), (status, Assert.Single(Texts(refused, "errors"))));
            Assert.Equal(before, _folder.Text);

            // All in one go.
            string all = await Body(host, """
                [{ "role": "boothAir", "part": "sht4x", "source": "real", "bus": 1, "address": "0x44" },
                 { "role": "piece", "part": "mlx90614", "source": "real", "bus": 1, "address": "0x5A" },
                 { "role": "exhaust", "part": "contact", "source": "real", "pin": 23 },
                 { "role": "intakeAir", "part": "none" }, { "role": "filter", "part": "none" }]
                """, "real");
            (_, plan) = await host.Post("/api/setup/sensors/preview", all);
            Assert.Empty(Texts(plan, "errors"));
            Assert.Equal(
                [
                    "light:source: emulated to real",
                    "sensors:boothAir:source: emulated to real",
                    "sensors:exhaust:source: emulated to real",
                    "sensors:filter:part: ads1115-pressure to none",
                    "sensors:intakeAir:part: bme280 to none",
                    "sensors:piece:source: emulated to real",
                ],
                plan.GetProperty("changes").EnumerateArray().Select(change => $"{Text(change, "key")}: {Text(change, "before")} to {Text(change, "after")}"));
            Assert.Equal(before, _folder.Text);

            (status, JsonElement written) = await host.Post("/api/setup/sensors", all);
            Assert.Equal(200, status);
            Assert.Equal(Written(before), _folder.Text);
            Assert.Empty(ConfigurationCheck.Errors(ConfigurationFile.Read(_folder.JsonPath)));
            Assert.Equal(
                ["light:source", "sensors:boothAir:source", "sensors:exhaust:source", "sensors:filter:part", "sensors:intakeAir:part", "sensors:piece:source"],
                Texts(written, "waiting").Order(StringComparer.Ordinal));
            Assert.Equal(before, await File.ReadAllTextAsync(_folder.JsonPath + ".1"));
        }

        await using (JobHost host = await Start())
        {
            JsonElement state = default;
            await Eventually.TrueAsync(
                () =>
                {
                    state = host.Get("/api/setup").GetAwaiter().GetResult();
                    return Step(state, "sensors").GetProperty("done").GetBoolean();
                },
                "every real sensor answers");
            Assert.False(state.GetProperty("isDemo").GetBoolean());
            Assert.Empty(Texts(state, "waiting"));
            Assert.Equal("not seen yet: green, yellow, red", Text(Step(state, "light"), "state"));
            Assert.All(state.GetProperty("lamps").EnumerateArray(), lamp => Assert.Equal(JsonValueKind.Null, lamp.GetProperty("trial").ValueKind));
        }

        // The service is stopped for the lamps.
        JumpingTime time = new();
        using (GpioSource pins = new(time, () => new GpioController(_board.Pins)))
        using (StringWriter said = new() { NewLine = "\n" })
        {
            CommandStreams streams = new(TextReader.Null, said, said);
            Assert.Equal(0, await LampsCommand.RunAsync(_folder.JsonPath, Each, pins, time, streams, CancellationToken.None, Guid.NewGuid().ToString()));
            Assert.Contains("say on the page under Setup which lamps you saw", said.ToString(), StringComparison.Ordinal);
        }

        await using (JobHost host = await Start())
        {
            JsonElement[] lamps = [.. (await host.Get("/api/setup")).GetProperty("lamps").EnumerateArray()];
            Assert.Equal(
                ["green 1970-01-01T00:00:04Z", "yellow 1970-01-01T00:00:02Z", "red 1970-01-01T00:00:00Z"],
                lamps.Select(lamp => $"{Text(lamp, "id")} {lamp.GetProperty("trial").GetProperty("time").GetDateTimeOffset().UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture)}"));
            foreach (JsonElement lamp in lamps)
            {
                Assert.Equal(200, (await host.Post("/api/setup/confirm", $$"""{ "id": "{{Text(lamp, "id")}}" }""")).Status);
            }

            Assert.True(Step(await host.Get("/api/setup"), "light").GetProperty("done").GetBoolean());
        }
    }

    // The shipped line of each sensor, with the one word that changes.
    private static string Written(string before)
    {
        (string Was, string Is)[] words =
        [
            ("\"boothAir\": { \"part\": \"sht4x\", \"source\": \"emulated\"", "\"boothAir\": { \"part\": \"sht4x\", \"source\": \"real\""),
            ("\"intakeAir\": { \"part\": \"bme280\",", "\"intakeAir\": { \"part\": \"none\","),
            ("\"piece\": { \"part\": \"mlx90614\", \"source\": \"emulated\"", "\"piece\": { \"part\": \"mlx90614\", \"source\": \"real\""),
            ("\"exhaust\": { \"part\": \"contact\", \"source\": \"emulated\"", "\"exhaust\": { \"part\": \"contact\", \"source\": \"real\""),
            ("\"filter\": {\n      \"part\": \"ads1115-pressure\",", "\"filter\": {\n      \"part\": \"none\","),
            ("Real needs real sensors, or sensors:proving.\n    \"source\": \"emulated\",", "Real needs real sensors, or sensors:proving.\n    \"source\": \"real\","),
        ];
        foreach ((string was, string @is) in words)
        {
            Assert.Single(before.Split(was)[1..]);
            before = before.Replace(was, @is, StringComparison.Ordinal);
        }

        return before;
    }

    private Task<JobHost> Start() => JobHost.StartWithFile(_folder.JsonPath, _board.Register, ("mqtt:use", "off"), ("series:folder", _folder.Folder), ("clock:requireSynchronised", "false"));

    private static async Task<string> Body(JobHost host, string sensors, string light = "emulated") =>
        $$"""{ "version": "{{Text((await host.Get("/api/setup")).GetProperty("file"), "version")}}", "sensors": {{sensors}}, "light": "{{light}}" }""";

    private static int FreePort()
    {
        using TcpListener free = new(IPAddress.Loopback, 0);
        free.Start();
        return ((IPEndPoint)free.LocalEndpoint).Port;
    }

    private static JsonElement Step(JsonElement state, string id) => state.GetProperty("steps").EnumerateArray().Single(step => Text(step, "id") == id);

    private static string Text(JsonElement json, string name) => json.GetProperty(name).GetString()!;

    private static string[] Texts(JsonElement json, string name) => [.. json.GetProperty(name).EnumerateArray().Select(text => text.GetString()!)];
}
