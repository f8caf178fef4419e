using System.Text.RegularExpressions;
using BoothWatch.Service.Configuration;
using BoothWatch.Service.Outputs.Light;
using BoothWatch.Service.Sensors;
using BoothWatch.Service.Sensors.Emulation;
using BoothWatch.Service.Sensors.Sht4x;
using BoothWatch.Service.Tests.Jobs;
using BoothWatch.Service.Tests.Setup;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace BoothWatch.Page.Tests;

/// <summary>The setup page in a real browser, over the whole service on a copy of the shipped configuration.</summary>
[Collection(BrowserTests.Name)]
public sealed class SetupTests(Browser browser) : IDisposable
{
    private readonly ConfigFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [BrowserTheory]
    [InlineData(390, 844, ColorScheme.Dark)]
    [InlineData(1280, 800, ColorScheme.Light)]
    public async Task Page_SetsUpABooth_FitsAGlovedFingerAndIsAccessible(int width, int height, ColorScheme scheme)
    {
        await using JobHost host = await JobHost.StartWithFile(_folder.JsonPath, ("mqtt:use", "off"));
        host.Services.GetRequiredService<I2cBusSource>().Emulated(1).Attach(0x45, new EmulatedSht4x(() => new AirSignal(21, 50, 101_300), TimeProvider.System, 1));
        await using Tab tab = await SignedIn(host, width, height, scheme);
        IPage page = tab.Page;
        await Expect(page.Locator("#steps li")).ToHaveCountAsync(5);
        await Expect(page.Locator("#filePath")).ToHaveTextAsync(_folder.JsonPath);
        await Expect(page.GetByLabel("Shop")).ToHaveValueAsync("Harbour Lane");
        await Pictures.Keep(tab, $"setup-{width}-first");

        await page.GetByRole(AriaRole.Button, new() { Name = "Look for sensors" }).ClickAsync();
        await Expect(page.Locator("#scanOutcome")).ToContainTextAsync("1 not configured yet; 5 other places are silent.");
        await Expect(page.Locator("#sensorChanges")).ToHaveTextAsync("Nothing: the file says so already.");
        await page.Locator("#found li", new() { HasText = "0x45" }).GetByLabel("It measures").SelectOptionAsync("boothAirCheck");
        await Expect(page.Locator("#sensorChanges li")).ToHaveTextAsync(["sensors:boothAirCheck:part from none to sht4x"]);
        await page.Locator("#found li", new() { HasText = "0x45" }).GetByLabel("It measures").SelectOptionAsync("");
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Write these changes" })).ToBeDisabledAsync();

        // Refused with the words of the check, then written.
        await page.GetByLabel("Height above sea level, m").FillAsync("9000");
        await page.GetByLabel("Booth", new() { Exact = true }).FillAsync("north");
        await page.Locator("#booth").GetByRole(AriaRole.Button, new() { Name = "Save" }).ClickAsync();
        await Expect(page.Locator("#booth [role=alert]")).ToContainTextAsync("booth:altitudeM is 9000; give a height from -430 to 5000 m");
        await Pictures.Keep(tab, $"setup-{width}-refused");
        await IsAccessible(page);
        await page.GetByLabel("Height above sea level, m").FillAsync("120");
        await page.Locator("#booth").GetByRole(AriaRole.Button, new() { Name = "Save" }).ClickAsync();
        await Expect(page.Locator("#booth [role=status]")).ToContainTextAsync("It takes effect at the next start");
        await Expect(page.Locator("#restart")).ToContainTextAsync("booth:name, booth:altitudeM");
        await page.Locator("[data-key='coat:kind']").SelectOptionAsync("flash");
        await page.GetByLabel("Most retarder, %, by the can").FillAsync("12,5");
        await page.Locator("#materials").GetByRole(AriaRole.Button, new() { Name = "Save" }).ClickAsync();
        await Expect(page.Locator("#materials [role=status]")).ToContainTextAsync("It takes effect at the next start");
        Assert.Contains("\"name\": \"north\",", _folder.Text, StringComparison.Ordinal);
        Assert.Contains("\"kind\": \"flash\",", _folder.Text, StringComparison.Ordinal);
        Assert.Contains("\"retarderHighestPct\": 12.5,", _folder.Text, StringComparison.Ordinal);
        await Expect(page.Locator("#steps li[data-done=true]")).ToHaveCountAsync(2);
        await Expect(page.Locator("#lamps li")).ToHaveCountAsync(3);
        await Expect(page.Locator("#channels li")).ToHaveCountAsync(4);
        await Expect(page.Locator("#undoText")).ToContainTextAsync("coat:kind from flash to clear; coat:retarderHighestPct from 12.5 to (not set)");

        foreach (ILocator part in await page.Locator("main :is(button, input, select):visible").AllAsync())
        {
            LocatorBoundingBoxResult box = (await part.BoundingBoxAsync())!;
            Assert.True(box.Height >= 56 && box.Width >= 56, $"{await part.EvaluateAsync<string>("e => e.outerHTML")} is {box.Width:0} by {box.Height:0} px");
        }

        await Pictures.Keep(tab, $"setup-{width}-done");
        Assert.False(await page.EvaluateAsync<bool>("document.documentElement.scrollWidth > innerWidth"), "the page scrolls sideways");
        await IsAccessible(page);

        await page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await Expect(page.Locator("#undoText")).ToContainTextAsync("booth:altitudeM from 120 to 0; booth:name from north to corner");
        Assert.DoesNotContain("\"kind\": \"flash\",", _folder.Text, StringComparison.Ordinal);

        // The console names the one refusal that the wrong height got, and nothing of the content policy.
        Assert.Contains("400", Assert.Single(tab.Complaints), StringComparison.Ordinal);
    }

    [BrowserTheory]
    [InlineData(390, 844, ColorScheme.Light)]
    [InlineData(1280, 800, ColorScheme.Dark)]
    public async Task Sensors_FoundOnTheBoard_AreWrittenInOneGo_AsShown(int width, int height, ColorScheme scheme)
    {
        FakeBoard board = new();
        await using JobHost host = await JobHost.StartWithFile(_folder.JsonPath, board.Register, ("mqtt:use", "off"));
        string before = _folder.Text;
        await using Tab tab = await SignedIn(host, width, height, scheme);
        IPage page = tab.Page;
        await page.GetByRole(AriaRole.Button, new() { Name = "Look for sensors" }).ClickAsync();

        // What is guessed is what was found; the rest gives way, so that nothing emulated is left.
        ILocator Measures(string place) => page.Locator("#found li", new() { HasText = place }).GetByLabel("It measures");
        await Expect(Measures("0x44 on /dev/i2c-1")).ToHaveValueAsync("boothAir");
        await Expect(Measures("0x5A on /dev/i2c-1")).ToHaveValueAsync("piece");
        await Expect(page.GetByLabel("Proof of exhaust")).ToHaveValueAsync("contact");
        await Expect(page.GetByLabel("Intake air", new() { Exact = true })).ToHaveValueAsync("none");
        await Expect(page.Locator("#sensorNotes")).ToContainTextAsync("No lamp lights up");
        await page.GetByLabel("Booth light").SelectOptionAsync("real");
        string[] changes =
        [
            "light:source from emulated to real",
            "sensors:boothAir:source from emulated to real",
            "sensors:exhaust:source from emulated to real",
            "sensors:filter:part from ads1115-pressure to none",
            "sensors:intakeAir:part from bme280 to none",
            "sensors:piece:source from emulated to real",
        ];
        await Expect(page.Locator("#sensorChanges li")).ToHaveTextAsync(changes);
        await Pictures.Keep(tab, $"setup-sensors-{width}-{scheme}");
        await IsAccessible(page);
        Assert.False(await page.EvaluateAsync<bool>("document.documentElement.scrollWidth > innerWidth"), "the page scrolls sideways");
        foreach (ILocator part in await page.Locator("#sensors button, #sensors select").AllAsync())
        {
            LocatorBoundingBoxResult box = (await part.BoundingBoxAsync())!;
            Assert.True(box.Height >= 56 && box.Width >= 56, $"{await part.EvaluateAsync<string>("e => e.outerHTML")} is {box.Width:0} by {box.Height:0} px");
        }

        // A mixture is refused in the words of the check, and so are two parts for one thing.
        await page.GetByLabel("Intake air", new() { Exact = true }).SelectOptionAsync("keep");
        await Expect(page.Locator("#sensorsForm .problems")).ToContainTextAsync("sensors:intakeAir is emulated beside sensors:boothAir, sensors:piece, sensors:exhaust, which are real; give each the source real or the part none");
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Write these changes" })).ToBeDisabledAsync();
        await Pictures.Keep(tab, $"setup-sensors-{width}-refused");
        await IsAccessible(page);
        Assert.Equal(before, _folder.Text);
        await page.GetByLabel("Intake air", new() { Exact = true }).SelectOptionAsync("none");

        await page.GetByRole(AriaRole.Button, new() { Name = "Write these changes" }).ClickAsync();
        await Expect(page.Locator("#sensorsForm .outcome")).ToContainTextAsync("It takes effect at the next start");
        await Expect(page.Locator("#restart")).ToContainTextAsync("sensors:piece:source");
        await Expect(page.Locator("#sensorChanges")).ToHaveTextAsync("Nothing: the file says so already.");
        Assert.Empty(ConfigurationCheck.Errors(ConfigurationFile.Read(_folder.JsonPath)));
        Assert.Equal("real", ConfigurationFile.Read(_folder.JsonPath).Configuration["sensors:piece:source"]);
        await Pictures.Keep(tab, $"setup-sensors-{width}-written");
        await IsAccessible(page);

        await page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await Expect(page.Locator("#fileOutcome")).ToContainTextAsync("The earlier version is back");
        Assert.Equal(before, _folder.Text);
        await Expect(page.Locator("#sensorChanges li")).ToHaveCountAsync(changes.Length - 1);
        Assert.Empty(tab.Complaints);
    }

    [BrowserFact]
    public async Task Sensors_OfAFileThatIsEditedMeanwhile_AreNotWritten_AndTheNewFileIsShown()
    {
        FakeBoard board = new();
        await using JobHost host = await JobHost.StartWithFile(_folder.JsonPath, board.Register, ("mqtt:use", "off"));
        await using Tab tab = await SignedIn(host, 390, 844, ColorScheme.Dark);
        IPage page = tab.Page;
        await page.GetByRole(AriaRole.Button, new() { Name = "Look for sensors" }).ClickAsync();
        await Expect(page.Locator("#sensorChanges li")).ToHaveCountAsync(5);
        await File.WriteAllTextAsync(_folder.JsonPath, _folder.Text.Replace("\"name\": \"corner\"", "\"name\": \"yard\"", StringComparison.Ordinal));
        string edited = _folder.Text;
        await page.GetByRole(AriaRole.Button, new() { Name = "Write these changes" }).ClickAsync();
        await Expect(page.Locator("#sensorsForm .outcome")).ToContainTextAsync("somebody has changed the file since this page was loaded");
        await Expect(page.GetByLabel("Booth", new() { Exact = true })).ToHaveValueAsync("yard");
        Assert.Equal(edited, _folder.Text);
        await page.GetByRole(AriaRole.Button, new() { Name = "Write these changes" }).ClickAsync();
        await Expect(page.Locator("#sensorsForm .outcome")).ToContainTextAsync("It takes effect at the next start");
    }

    [BrowserFact]
    public async Task File_ThatIsReadOnlyForTheService_IsShownWithTheLinesThatUnlockIt_AndTheLinesToTypeIn()
    {
        FakeBoard board = new();
        await using JobHost host = await JobHost.StartWithFile(_folder.JsonPath, board.Register, ("mqtt:use", "off"));
        File.SetAttributes(_folder.JsonPath, FileAttributes.ReadOnly);
        await using Tab tab = await SignedIn(host, 390, 844, ColorScheme.Dark);
        IPage page = tab.Page;
        await Expect(page.Locator("#fileNote")).ToContainTextAsync("It cannot be changed from here: BoothWatch may not write");
        await Expect(page.Locator("#unlockLines")).ToContainTextAsync($"{_folder.Folder} {_folder.JsonPath}");
        await page.GetByRole(AriaRole.Button, new() { Name = "Look for sensors" }).ClickAsync();
        await Expect(page.Locator("#found code").First).ToHaveTextAsync("\"boothAir\": { \"part\": \"sht4x\", \"source\": \"real\", \"bus\": 1, \"address\": \"0x44\" },");
        await Expect(page.Locator("#sensorsForm")).ToBeHiddenAsync();
        await Pictures.Keep(tab, "setup-locked-390");
        await IsAccessible(page);
        File.SetAttributes(_folder.JsonPath, FileAttributes.Normal);
    }

    [BrowserFact]
    public async Task Keyboard_Alone_WritesTheFoundSensors()
    {
        FakeBoard board = new();
        await using JobHost host = await JobHost.StartWithFile(_folder.JsonPath, board.Register, ("mqtt:use", "off"));
        await using Tab tab = await SignedIn(host, 1280, 800, ColorScheme.Light);
        IPage page = tab.Page;
        await TabTo(page, page.GetByRole(AriaRole.Button, new() { Name = "Look for sensors" }));
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("#sensorChanges li")).ToHaveCountAsync(5);
        await TabTo(page, page.GetByLabel("Proof of exhaust"));
        await page.Keyboard.TypeAsync("not");
        await Expect(page.Locator("#sensorNotes")).ToContainTextAsync("Nothing proves the exhaust");
        await Expect(page.GetByLabel("Proof of exhaust")).ToBeFocusedAsync();
        await TabTo(page, page.GetByRole(AriaRole.Button, new() { Name = "Write these changes" }));
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("#sensorsForm .outcome")).ToContainTextAsync("It takes effect at the next start");
        ConfigurationFile file = ConfigurationFile.Read(_folder.JsonPath);
        Assert.Empty(ConfigurationCheck.Errors(file));
        Assert.Equal(("real", "none"), (file.Configuration["sensors:boothAir:source"], file.Configuration["sensors:exhaust:part"]));
        Assert.Empty(tab.Complaints);
    }

    [BrowserTheory]
    [InlineData(390, 844)]
    [InlineData(1280, 800)]
    public async Task Lamps_TriedWithTheCommand_AreNoticed_AndOnlyNeedToBeConfirmed(int width, int height)
    {
        FakeBoard board = new();
        await using JobHost host = await JobHost.StartWithFile(
            _folder.JsonPath, board.Register, ("mqtt:use", "off"), ("sensors:proving", "true"), ("light:source", "real"));
        await using Tab tab = await SignedIn(host, width, height, ColorScheme.Dark);
        IPage page = tab.Page;
        await Expect(page.Locator("#lampCommands")).ToContainTextAsync(" lamps --seconds 10 --config " + _folder.JsonPath);
        await Expect(page.Locator("#lamps li").First).ToContainTextAsync("not seen yet");
        await page.GetByRole(AriaRole.Button, new() { Name = "Copy the lines" }).ClickAsync();
        await Expect(page.Locator("#copyOutcome")).ToHaveTextAsync(new Regex("Copied|Selected"));

        LampTrials trials = host.Services.GetRequiredService<LampTrials>();
        LightOptions light = host.Services.GetRequiredService<IOptions<LightOptions>>().Value;
        DateTimeOffset lit = new(2026, 11, 25, 10, 42, 0, TimeSpan.Zero);
        trials.Keep(new Dictionary<string, LampTrial>
        {
            ["red"] = new(light.WiringOf(light.RedPin), lit, null),
            ["yellow"] = new(light.WiringOf(light.YellowPin), lit, "Yellow on GPIO 27: the pin is in use by something else"),
        });
        await page.EvaluateAsync("document.dispatchEvent(new Event('visibilitychange'))");
        ILocator red = page.Locator("#lamps [data-id=red]");
        await Expect(red).ToContainTextAsync("Did you see it, and no other?");
        await Expect(page.Locator("#lamps [data-id=yellow]")).ToContainTextAsync("the pin is in use by something else");
        await red.ScrollIntoViewIfNeededAsync();
        await Pictures.Keep(tab, $"setup-lamps-{width}");
        await IsAccessible(page);
        await red.GetByRole(AriaRole.Button).ClickAsync();
        await Expect(red).ToContainTextAsync("seen ");
        await Expect(red).Not.ToContainTextAsync("Did you see it");
        await Expect(page.Locator("#lamps [data-id=green]")).ToContainTextAsync("not seen yet");
        Assert.Empty(tab.Complaints);
    }

    [BrowserFact]
    public async Task Keyboard_Alone_RenamesTheBooth_LooksForSensors_AndUndoes()
    {
        await using JobHost host = await JobHost.StartWithFile(_folder.JsonPath, ("mqtt:use", "off"));
        string before = _folder.Text;
        await using Tab tab = await SignedIn(host, 1280, 800, ColorScheme.Dark);
        IPage page = tab.Page;
        await Expect(page.GetByLabel("Shop")).ToHaveValueAsync("Harbour Lane");
        await TabTo(page, page.GetByRole(AriaRole.Button, new() { Name = "Look for sensors" }));
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("#found li")).ToHaveCountAsync(4);
        await TabTo(page, page.GetByLabel("Booth", new() { Exact = true }));
        await page.Keyboard.PressAsync("Control+A");
        await page.Keyboard.TypeAsync("yard");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("#booth [role=status]")).ToContainTextAsync("It takes effect at the next start");
        Assert.Equal(before.Replace("\"corner\",", "\"yard\",", StringComparison.Ordinal), _folder.Text);
        await TabTo(page, page.GetByRole(AriaRole.Button, new() { Name = "Undo" }));
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("#fileOutcome")).ToContainTextAsync("The earlier version is back");
        Assert.Equal(before, _folder.Text);
        Assert.Empty(tab.Complaints);
    }

    [BrowserFact]
    public async Task Change_WithoutASession_LeadsToTheSignIn_AndWritesNothing()
    {
        await using JobHost host = await JobHost.StartWithFile(_folder.JsonPath, ("mqtt:use", "off"));
        string before = _folder.Text;
        await using Tab tab = await browser.Open(host.Url + "/setup", 390, 844);
        await Expect(tab.Page.GetByLabel("Shop")).ToHaveValueAsync("Harbour Lane");
        await tab.Page.GetByLabel("Shop").FillAsync("North Yard");
        await tab.Page.Locator("#booth").GetByRole(AriaRole.Button, new() { Name = "Save" }).ClickAsync();
        await Expect(tab.Page).ToHaveURLAsync(host.Url + "/sign-in?next=%2Fsetup");
        Assert.Equal(before, _folder.Text);
    }

    private async Task<Tab> SignedIn(JobHost host, int width, int height, ColorScheme scheme)
    {
        Tab tab = await browser.Open("about:blank", width, height);
        await tab.Page.EmulateMediaAsync(new() { ColorScheme = scheme });
        await tab.Page.GotoAsync(host.SignInLink.Replace("/sign-in", "/sign-in?next=%2Fsetup", StringComparison.Ordinal));
        await Expect(tab.Page).ToHaveURLAsync(host.Url + "/setup");
        return tab;
    }

    private static async Task IsAccessible(IPage page)
    {
        AxeResult result = await page.RunAxe();
        Assert.Empty(result.Violations.Select(v => $"{v.Id}: {v.Help} at {string.Join(", ", v.Nodes.Select(n => n.Html))}"));
    }

    /// <summary>Presses Tab until the element has the focus.</summary>
    private static async Task TabTo(IPage page, ILocator element)
    {
        for (int i = 0; i < 80; i++)
        {
            await page.Keyboard.PressAsync("Tab");
            if (await element.EvaluateAsync<bool>("element => element === document.activeElement"))
            {
                return;
            }
        }

        Assert.Fail($"{element} is not reached with the Tab key");
    }
}
