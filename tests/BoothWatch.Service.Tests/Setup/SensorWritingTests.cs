using System.Text.Json;
using BoothWatch.Service.Configuration;
using BoothWatch.Service.Sensors;
using BoothWatch.Service.Setup;
using BoothWatch.Service.Tests.Jobs;
using FsCheck.Xunit;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.Logging.Abstractions;

namespace BoothWatch.Service.Tests.Setup;

/// <summary>Which part measures what, written into a copy of the shipped configuration; <c>config check</c> is the judge of the result.</summary>
public sealed class SensorWritingTests : IDisposable
{
    private const string AllReal = """
        [{ "role": "boothAir", "part": "sht4x", "source": "real", "bus": 1, "address": "0x45" }, { "role": "piece", "part": "typed" },
         { "role": "exhaust", "part": "none" }, { "role": "intakeAir", "part": "none" }, { "role": "filter", "part": "none" }]
        """;

    private readonly ConfigFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Write_CanBeUndone_ToTheLastByte()
    {
        await using JobHost host = await Start();
        string before = _folder.Text;
        (int status, JsonElement state) = await Send(host, "", AllReal);
        Assert.Equal(200, status);
        Assert.Contains("\"boothAir\": { \"part\": \"sht4x\", \"source\": \"real\", \"bus\": 1, \"address\": \"0x45\" },", _folder.Text, StringComparison.Ordinal);
        Assert.Contains("\"piece\": { \"part\": \"typed\", ", _folder.Text, StringComparison.Ordinal);
        Assert.Contains("sensors:piece:part from typed to mlx90614", Texts(state.GetProperty("file").GetProperty("undo"), "changes"));

        (status, state) = await host.Post("/api/setup/undo", $$"""{ "version": "{{Version(state)}}" }""");
        Assert.Equal((200, before), (status, _folder.Text));
        Assert.Empty(Texts(state, "waiting"));
    }

    [Fact]
    public async Task Preview_SaysWhatTheVerdictWillBeHeldBackBy()
    {
        await using JobHost host = await Start();
        (_, JsonElement plan) = await Send(host, "/preview", AllReal);
        string[] notes = Texts(plan, "notes");
        Assert.Contains(notes, note => note.Contains("verdict:requireExhaustProof", StringComparison.Ordinal));
        Assert.Contains(notes, note => note.Contains("light:source is emulated", StringComparison.Ordinal));
        Assert.DoesNotContain(notes, note => note.Contains("piece", StringComparison.Ordinal));

        (_, plan) = await Send(host, "/preview", AllReal.Replace("typed", "none", StringComparison.Ordinal).Replace("\"part\": \"sht4x\"", "\"part\": \"none\"", StringComparison.Ordinal));
        notes = Texts(plan, "notes");
        Assert.Contains(notes, note => note.StartsWith("Nothing measures the air in the booth", StringComparison.Ordinal));
        Assert.Contains(notes, note => note.StartsWith("Nothing measures the piece", StringComparison.Ordinal));
        Assert.Equal(["boothwatch.json"], _folder.Names);
    }

    [Theory]
    [InlineData("""[{ "role": "boothAir", "part": "mlx90614" }]""", "emulated", "sensors:boothAir:part is mlx90614; give one of sht4x, sht3x, bme280, or none")]
    [InlineData("""[{ "role": "boothAir", "part": "sht4x", "address": "0x50" }]""", "emulated", "sensors:boothAir:address is 0x50; sht4x can be at 0x44 or 0x45 or 0x46, for example \"0x44\"")]
    [InlineData("""[{ "role": "boothAir", "part": "sht4x", "source": "wired" }]""", "emulated", "sensors:boothAir:source is wired; give emulated or real")]
    [InlineData("""[{ "role": "boothAir", "part": "sht4x", "bus": 300 }]""", "emulated", "sensors:boothAir:bus is 300; give the number n of /dev/i2c-n, from 0 to 255, for example 1")]
    [InlineData("""[{ "role": "boothAirCheck", "part": "sht4x", "address": "0x44" }]""", "emulated",
        "sensors:boothAirCheck:address is 0x44 on bus 1, where sensors:boothAir already is; give one of them another address or bus")]
    [InlineData("""[{ "role": "exhaust", "part": "contact", "pin": 17 }]""", "emulated", "light:greenPin is 17, and so is sensors:exhaust:pin; give each its own GPIO number")]
    [InlineData("[]", "real", "light:source is real, and sensors:boothAir, sensors:intakeAir, sensors:piece, sensors:exhaust, sensors:filter are emulated; "
        + "give the light the source emulated, or each of these the source real, or set sensors:proving to true while you prove parts (the verdict then stays at wait)")]
    public async Task Write_OfWhatCannotBe_IsRefusedInTheWordsOfTheCheck_AndWritesNothing(string sensors, string light, string error)
    {
        await using JobHost host = await Start();
        string before = _folder.Text;
        (int status, JsonElement answer) = await Send(host, "", sensors, light);
        Assert.Equal(400, status);
        Assert.Equal([error], Texts(answer, "errors"));
        Assert.Equal(before, _folder.Text);
        Assert.Equal(["boothwatch.json"], _folder.Names);
    }

    [Theory]
    [InlineData("""[{ "role": "boothAir", "part": "none" }, { "role": "boothAir", "part": "none" }]""")]
    [InlineData("""[{ "role": "roof", "part": "none" }]""")]
    [InlineData("""[{ "role": "boothAir" }]""")]
    [InlineData("""[{ "role": "boothAir", "part": "none", "bus": "one" }]""")]
    [InlineData("""[null]""")]
    [InlineData("\"all\"")]
    public async Task Write_OfABodyThatIsNoChoice_IsRefused(string sensors)
    {
        await using JobHost host = await Start();
        (int status, JsonElement answer) = await Send(host, "", sensors);
        Assert.Equal((400, "The request is wrong"), (status, answer.GetProperty("title").GetString()));
        Assert.Equal(["boothwatch.json"], _folder.Names);
    }

    [Fact]
    public async Task WriteAndPreview_OfAFileThatSomebodyHasEditedMeanwhile_AreRefused()
    {
        await using JobHost host = await Start();
        string body = $$"""{ "version": "{{Version(await host.Get("/api/setup"))}}", "sensors": {{AllReal}} }""";
        await File.AppendAllTextAsync(_folder.JsonPath, "// a note\n");
        Assert.Equal(409, (await host.Post("/api/setup/sensors/preview", body)).Status);
        Assert.Equal(409, (await host.Post("/api/setup/sensors", body)).Status);
        Assert.EndsWith("// a note\n", _folder.Text, StringComparison.Ordinal);
        Assert.Equal(["boothwatch.json"], _folder.Names);
    }

    [Fact]
    public async Task File_WithAValueThatCannotBeRead_IsReported_AndNotWritten()
    {
        await using JobHost host = await Start();
        await File.WriteAllTextAsync(_folder.JsonPath, _folder.Text.Replace("\"bus\": 1, \"address\": \"0x44\"", "\"bus\": \"one\", \"address\": \"0x44\"", StringComparison.Ordinal)
            .Replace("\"altitudeM\": 0", "\"altitudeM\": \"high\"", StringComparison.Ordinal));
        JsonElement state = await host.Get("/api/setup");
        Assert.Equal(2, Texts(state.GetProperty("file"), "errors").Length);
        (int status, JsonElement answer) = await Send(host, "", AllReal);
        Assert.Equal(400, status);
        Assert.All(Texts(answer, "errors"), error => Assert.StartsWith("The file as it stands is not good: ", error, StringComparison.Ordinal));
        Assert.Equal(["boothwatch.json"], _folder.Names);
    }

    [Fact]
    public void Change_OfASettingThatTheEnvironmentGives_IsRefusedWithTheNameOfTheVariable()
    {
        IConfiguration environment = new ConfigurationBuilder().AddInMemoryCollection([new("sensors:boothAir:source", "emulated"), new("sensors:piece:source", "Real")]).Build();
        ConfigurationEditor editor = new(ConfigurationFile.Read(_folder.JsonPath), NullLogger<ConfigurationEditor>.Instance, environment);
        SensorPlan plan = new(
            [.. new SensorsOptions().All().Select(sensor => new SensorChoice(sensor.Role, sensor.Options.Part, "real", null, null, null))], null, null);
        (ConfigurationFile file, string version) = editor.Present();
        string before = _folder.Text;
        EditOutcome outcome = editor.Change(version, plan.Settings(file.Configuration));
        string error = Assert.Single(outcome.Errors);
        Assert.StartsWith("sensors:boothAir:source is given by the environment variable BOOTHWATCH_sensors__boothAir__source, which wins over the file", error, StringComparison.Ordinal);
        Assert.Equal(before, _folder.Text);
    }

    [Fact]
    public async Task Proving_LetsOneRealPartStandBesideEmulatedOnes_AndIsEndedHere()
    {
        await using JobHost host = await Start();
        const string One = """[{ "role": "boothAir", "part": "sht4x", "source": "real", "bus": 1, "address": "0x44" }]""";
        (int status, JsonElement answer) = await Send(host, "", One, proving: "true");
        Assert.Equal(200, status);
        Assert.True(answer.GetProperty("fileProving").GetBoolean());
        (status, answer) = await Send(host, "", One, proving: "false");
        Assert.Equal(400, status);
        Assert.Contains("are emulated beside sensors:boothAir", Texts(answer, "errors")[0], StringComparison.Ordinal);
        Assert.Equal(200, (await Send(host, "", AllReal, proving: "false")).Status);
    }

    [Fact]
    public async Task Write_IntoAFileThatSaysNearlyNothing_AddsWhatIsNeeded()
    {
        await File.WriteAllTextAsync(_folder.JsonPath, "{\n  // ours\n}\n");
        await using JobHost host = await Start();
        Assert.Equal(200, (await Send(host, "", AllReal)).Status);
        Assert.StartsWith("{\n  // ours\n  \"sensors\": { ", _folder.Text, StringComparison.Ordinal);
        ConfigurationFile file = ConfigurationFile.Read(_folder.JsonPath);
        Assert.Empty(ConfigurationCheck.Errors(file));
        Assert.Equal("real", file.Configuration["sensors:boothAir:source"]);
    }

    /// <summary>Any choice at all: what is written passes the check, gives the station pressure once at most, and touches nothing but sensors.</summary>
    [Property(MaxTest = 200)]
    public void Settings_OfAnyChoice_AreRefusedOrGood_AndTouchNothingElse(int seed)
    {
        Random random = new(seed);
        ConfigurationEditor editor = new(ConfigurationFile.Read(_folder.JsonPath), NullLogger<ConfigurationEditor>.Instance, new ConfigurationBuilder().Build());
        string[] sources = random.Next(3) > 0 ? ["real"] : ["real", "emulated"];
        SensorChoice[] choices =
        [
            .. SensorRole.All.Where(_ => random.Next(6) > 0).Select(role =>
            {
                string[] parts = [SensorsOptions.None, .. SensorParts.All.Where(part => part.Roles.Contains(role) && part.Id != "mqtt").Select(part => part.Id)];
                string part = parts[random.Next(parts.Length)];
                string? address = SensorParts.Find(part) is I2cPart onBus ? $"0x{onBus.UsualAddresses[random.Next(onBus.UsualAddresses.Count)]:X2}" : null;
                return new SensorChoice(role, part, sources[random.Next(sources.Length)], address is null ? null : random.Next(1, 3), address, null);
            }),
        ];
        (ConfigurationFile file, _) = editor.Present();
        EditPreview preview = editor.Preview(new SensorPlan(choices, null, null).Settings(file.Configuration));
        Assert.All(preview.Changes, change => Assert.StartsWith("sensors:", change.Key, StringComparison.Ordinal));
        Assert.DoesNotContain(preview.Errors, error => error.Contains("stationPressure", StringComparison.Ordinal));
        Assert.All(preview.Errors, error => Assert.True(
            error.Contains("emulated beside", StringComparison.Ordinal) || error.Contains("already is", StringComparison.Ordinal), error));

        // A sensor that can give the pressure and is left in gives it.
        var after = (SensorsOptions)ConfigurationSections.Bind(preview.After.Configuration, typeof(SensorsOptions));
        SensorOptions[] able = [.. after.All().Select(sensor => sensor.Options).Where(options => options.Part == "bme280")];
        Assert.Equal(able.Length > 0 ? 1 : 0, able.Count(options => options.StationPressure));
    }

    // It gave no pressure because another one did; that one is gone now.
    [Theory]
    [InlineData("none", true)]
    [InlineData("bme280", false)]
    public void Settings_WithTheOneGoneThatGaveThePressure_LetTheOtherGiveIt(string intake, bool gives)
    {
        IConfiguration present = new ConfigurationBuilder().AddInMemoryCollection(
            [new("sensors:boothAir:part", "bme280"), new("sensors:boothAir:stationPressure", "false"), new("sensors:intakeAir:part", "bme280")]).Build();
        SensorPlan plan = new([Choice(SensorRole.BoothAir, "bme280"), Choice(SensorRole.IntakeAir, intake)], null, null);
        Assert.Equal(gives, plan.Settings(present)["sensors:boothAir:stationPressure"].GetBoolean());
        Assert.Equal(!gives, plan.Settings(present).TryGetValue("sensors:intakeAir:stationPressure", out JsonElement other) && other.GetBoolean());

        static SensorChoice Choice(SensorRole role, string part) => new(role, part, "real", 1, null, null);
    }

    [Fact]
    public void Settings_WhereNobodyWasToGiveThePressure_LeaveItSo()
    {
        IConfiguration present = new ConfigurationBuilder().AddInMemoryCollection(
            [new("sensors:boothAir:part", "bme280"), new("sensors:boothAir:stationPressure", "false"), new("sensors:intakeAir:part", "none")]).Build();
        SensorPlan plan = new([new SensorChoice(SensorRole.BoothAir, "bme280", "real", 1, null, null)], null, null);
        Assert.False(plan.Settings(present)["sensors:boothAir:stationPressure"].GetBoolean());
    }

    private Task<JobHost> Start() => JobHost.StartWithFile(_folder.JsonPath, ("mqtt:use", "off"));

    private static async Task<(int Status, JsonElement Body)> Send(JobHost host, string what, string sensors, string light = "emulated", string proving = "null") => await host.Post(
        "/api/setup/sensors" + what,
        $$"""{ "version": "{{Version(await host.Get("/api/setup"))}}", "sensors": {{sensors}}, "light": "{{light}}", "proving": {{proving}} }""");

    private static string Version(JsonElement state) => state.GetProperty("file").GetProperty("version").GetString()!;

    private static string[] Texts(JsonElement json, string name) => [.. json.GetProperty(name).EnumerateArray().Select(text => text.GetString()!)];
}
