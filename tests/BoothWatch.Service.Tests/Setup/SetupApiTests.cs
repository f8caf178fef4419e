using System.Text.Json;
using BoothWatch.Service.Configuration;
using BoothWatch.Service.Tests.Jobs;

namespace BoothWatch.Service.Tests.Setup;

/// <summary>Settings over the whole service, on a copy of the shipped configuration.</summary>
public sealed class SetupApiTests : IDisposable
{
    private readonly ConfigFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Change_OfAName_IsOneLineOfTheFile_WaitsForTheNextStart_AndCanBeUndone()
    {
        await using JobHost host = await Start();
        string before = _folder.Text;
        (int status, JsonElement answer) = await Change(host, """{ "booth:name": "north \"A\"", "booth:shop": "Harbour Lane" }""");
        Assert.Equal(200, status);
        Assert.Equal(before.Replace("\"corner\",", "\"north \\\"A\\\"\",", StringComparison.Ordinal), _folder.Text);
        Assert.Empty(ConfigurationCheck.Errors(ConfigurationFile.Read(_folder.JsonPath)));
        JsonElement name = Setting(answer, "booth:name");
        Assert.Equal(("north \"A\"", "corner", true), (name.GetProperty("value").GetString(), name.GetProperty("running").GetString(), name.GetProperty("waitsForStart").GetBoolean()));
        Assert.False(Setting(answer, "booth:shop").GetProperty("waitsForStart").GetBoolean());
        Assert.Equal(["booth:name from north \"A\" to corner"], answer.GetProperty("file").GetProperty("undo").GetProperty("changes").EnumerateArray().Select(change => change.GetString()));

        (status, answer) = await host.Post("/api/setup/undo", $$"""{ "version": "{{Version(answer)}}" }""");
        Assert.Equal(200, status);
        Assert.Equal(before, _folder.Text);
        Assert.Equal(JsonValueKind.Null, answer.GetProperty("file").GetProperty("undo").ValueKind);
        (status, answer) = await host.Post("/api/setup/undo", $$"""{ "version": "{{Version(answer)}}" }""");
        Assert.Equal((409, "there is no earlier version of the file"), (status, answer.GetProperty("detail").GetString()));
    }

    [Fact]
    public async Task Change_HoldsAtTheNextStart()
    {
        await using (JobHost host = await Start())
        {
            Assert.Equal(200, (await Change(host, """{ "booth:name": "Nordbox", "coat:kind": "flash" }""")).Status);
            Assert.Equal("corner", (await host.Get("/api/now")).GetProperty("booth").GetString());
        }

        await using JobHost next = await Start();
        Assert.Equal("Nordbox", (await next.Get("/api/now")).GetProperty("booth").GetString());
        Assert.DoesNotContain((await next.Get("/api/setup")).GetProperty("settings").EnumerateArray(), setting => setting.GetProperty("waitsForStart").GetBoolean());
    }

    [Theory]
    [InlineData("""{ "booth:name": "" }""", "booth:name is \"\"; give a name of 1 to 60 characters, for example \"corner\"")]
    [InlineData("""{ "booth:altitudeM": 9000 }""", "booth:altitudeM is 9000; give a height from -430 to 5000 m, for example 120")]
    [InlineData("""{ "booth:altitudeM": "high" }""", "booth:altitudeM is \"high\"; give a number, for example 0")]
    [InlineData("""{ "coat:thinner": null }""", "coat:thinner is null; give a text, for example ordinary thinner, or leave it out")]
    [InlineData("""{ "coat:kind": "gloss" }""", "coat:kind is \"gloss\"; give one of flash, clear, colour, sealer, for example clear")]
    [InlineData("""{ "coat:cupMl": 5 }""", "coat:cupMl is 5; give a number from 10 to 20000 (mL), for example 250")]
    public async Task Change_ToABadValue_IsRefusedInTheWordsOfTheCheck_AndWritesNothing(string values, string error)
    {
        await using JobHost host = await Start();
        string before = _folder.Text;
        (int status, JsonElement answer) = await Change(host, values);
        Assert.Equal(400, status);
        Assert.Equal([error], answer.GetProperty("errors").EnumerateArray().Select(words => words.GetString()));
        Assert.Equal(before, _folder.Text);
        Assert.Equal(["boothwatch.json"], _folder.Names);
    }

    [Theory]
    [InlineData("""{ "page:url": "http://0.0.0.0:5080" }""")]
    [InlineData("""{ "access:reading": "open" }""")]
    [InlineData("""{ "booth:name": true }""")]
    [InlineData("""{ "booth:name": { "a": 1 } }""")]
    [InlineData("""{ "booth:name": "\ud800" }""")]
    [InlineData("""{ "booth:name": "a", "BOOTH:NAME": "b" }""")]
    [InlineData("[]")]
    public async Task Change_OfWhatMayNotBeChangedHere_IsRefused(string values)
    {
        await using JobHost host = await Start();
        string before = _folder.Text;
        Assert.Equal(400, (await Change(host, values)).Status);
        Assert.Equal(before, _folder.Text);
    }

    [Fact]
    public async Task Change_OfAFileThatSomebodyHasEditedMeanwhile_IsRefused()
    {
        await using JobHost host = await Start();
        string version = Version(await host.Get("/api/setup"));
        await File.AppendAllTextAsync(_folder.JsonPath, "// a note\n");
        (int status, JsonElement answer) = await host.Post("/api/setup/settings", $$"""{ "version": "{{version}}", "values": { "booth:name": "north" } }""");
        Assert.Equal((409, "The file has changed"), (status, answer.GetProperty("title").GetString()));
        Assert.EndsWith("// a note\n", _folder.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task File_BrokenByHand_IsReported_AndNotTouched()
    {
        await using JobHost host = await Start();
        await File.WriteAllTextAsync(_folder.JsonPath, "{ \"booth\": { \"name\": \"a\" ");
        JsonElement state = await host.Get("/api/setup");
        Assert.Contains("not valid JSON", state.GetProperty("file").GetProperty("errors")[0].GetString(), StringComparison.Ordinal);
        Assert.Equal(400, (await Change(host, """{ "booth:name": "north" }""")).Status);
        Assert.Equal("{ \"booth\": { \"name\": \"a\" ", _folder.Text);
        File.Delete(_folder.JsonPath);
        state = await host.Get("/api/setup");
        Assert.Contains("is gone", state.GetProperty("file").GetProperty("refusal").GetString(), StringComparison.Ordinal);
        Assert.Equal(409, (await Change(host, """{ "booth:name": "north" }""")).Status);
        Assert.Empty(_folder.Names);
    }

    [Fact]
    public async Task WithoutAFile_NothingCanBeChanged_AndItSaysWhatToDo()
    {
        await using JobHost host = await JobHost.Start();
        (int status, JsonElement answer) = await Change(host, """{ "booth:name": "north" }""");
        Assert.Equal(409, status);
        Assert.Contains("--config", answer.GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Steps_AreOpenUntilConfirmed_AndOpenAgainWhenWhatWasConfirmedChanges()
    {
        await using JobHost host = await Start(("light:buzzerPin", "5"));
        Assert.Equal(new[] { false, false, false }, Done(await host.Get("/api/setup"), "booth", "materials", "light"));
        foreach (string id in new[] { "booth", "materials", "green", "yellow", "red", "buzzer" })
        {
            Assert.Equal(200, (await host.Post("/api/setup/confirm", $$"""{ "id": "{{id}}" }""")).Status);
        }

        Assert.Equal(400, (await host.Post("/api/setup/confirm", """{ "id": "purple" }""")).Status);
        JsonElement state = await host.Get("/api/setup");
        Assert.Equal(new[] { true, true, false }, Done(state, "booth", "materials", "light")); // no lamp lights up at emulated pins
        Assert.All(state.GetProperty("lamps").EnumerateArray(), lamp => Assert.Equal(JsonValueKind.String, lamp.GetProperty("confirmed").ValueKind));

        await File.WriteAllTextAsync(_folder.JsonPath, _folder.Text.Replace("\"cupMl\": 250", "\"cupMl\": 400", StringComparison.Ordinal));
        Assert.Equal(new[] { true, false }, Done(await host.Get("/api/setup"), "booth", "materials"));
        Assert.Equal(200, (await Change(host, """{ "coat:cupMl": 300 }""")).Status);
        Assert.Equal(new[] { true, true }, Done(await host.Get("/api/setup"), "booth", "materials"));
    }

    [Fact]
    public async Task Page_AndItsFiles_AreServed_AndDescribed()
    {
        await using JobHost host = await Start();
        Assert.Contains("/setup.js", await host.Text("/setup"), StringComparison.Ordinal);
        Assert.NotEmpty(await host.Text("/setup.css"));
        Assert.Contains("\"/api/setup/scan\"", await host.Text("/api/openapi.json"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("settings")]
    [InlineData("undo")]
    [InlineData("scan")]
    [InlineData("confirm")]
    public async Task Change_WithoutASession_IsRefused(string address)
    {
        await using JobHost host = await JobHost.StartSignedOut(null);
        Assert.Equal(401, (await host.Post("/api/setup/" + address, """{ "version": "", "values": {}, "id": "booth" }""")).Status);
    }

    private Task<JobHost> Start(params (string Key, string Value)[] settings) => JobHost.StartWithFile(_folder.JsonPath, [("mqtt:use", "off"), .. settings]);

    private static async Task<(int Status, JsonElement Body)> Change(JobHost host, string values) =>
        await host.Post("/api/setup/settings", $$"""{ "version": "{{Version(await host.Get("/api/setup"))}}", "values": {{values}} }""");

    private static string Version(JsonElement state) => state.GetProperty("file").GetProperty("version").GetString()!;

    private static JsonElement Setting(JsonElement state, string key) => state.GetProperty("settings").EnumerateArray().Single(setting => setting.GetProperty("key").GetString() == key);

    private static bool[] Done(JsonElement state, params string[] ids) =>
        [.. ids.Select(id => state.GetProperty("steps").EnumerateArray().Single(step => step.GetProperty("id").GetString() == id).GetProperty("done").GetBoolean())];
}
