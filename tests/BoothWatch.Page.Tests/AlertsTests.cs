using BoothWatch.Alerts;
using BoothWatch.Service.Outputs.Alerts;
using BoothWatch.Service.Outputs.Alerts.WebPush;
using BoothWatch.Service.Tests.Jobs;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;

namespace BoothWatch.Page.Tests;

/// <summary>The page of alerts and the worker of the app in a real browser, over the whole service.</summary>
[Collection(BrowserTests.Name)]
public sealed class AlertsTests(Browser browser)
{
    private const int LooksAPush = 50;

    // Ends a test that would hang; nothing is measured by it.
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(5);

    // A browser's subscription needs its maker's push service; everything else here is the real thing.
    private const string FakeSubscription = """
        const subscription = {
          endpoint: "https://push.example/phone",
          toJSON: () => ({ keys: { p256dh: "BCVxsr7N_eNgVRqvHtD0zTZsEc6-VV-JvLexhqUzORcxaOzi6-AYWXvTBHm4bjyPjs7Vd8pZGH6SRpkNtoIAiw4", auth: "BTBZMqHH6r4Tts7J_aSIgg" } }),
          unsubscribe: async () => { window.name = ""; return true; },
        };
        PushManager.prototype.subscribe = async options => {
          if (!options.userVisibleOnly || options.applicationServerKey.length !== 87) { throw new Error("wrong options"); }
          window.name = "subscribed";
          return subscription;
        };
        PushManager.prototype.getSubscription = async () => window.name === "subscribed" ? subscription : null;
        Notification.requestPermission = async () => "granted";
        """;

    [BrowserTheory]
    [InlineData(390, 844)]
    [InlineData(1280, 800)]
    public async Task Alert_OnThePage_IsSeenAndAcknowledged(int width, int height)
    {
        await using JobHost host = await JobHost.Start(("mqtt:use", "off"), ("alerts:enabled", "false"));
        Begin(host);
        await using Tab tab = await browser.Open(host.Url, width, height);
        await tab.SignIn(host.SignInLink, host.Url + "/alerts");
        await Assertions.Expect(tab.Page.Locator("#alerts li").First).ToContainTextAsync("goes on");
        await Assertions.Expect(tab.Page.Locator("#channels li")).ToHaveCountAsync(4);
        await Assertions.Expect(tab.Page.Locator("#phoneText")).ToHaveTextAsync("This phone is not subscribed.");
        await Pictures.Keep(tab, $"alerts-{width}");
        Assert.False(await tab.Page.EvaluateAsync<bool>("document.documentElement.scrollWidth > innerWidth"), "the page scrolls sideways");
        AxeResult result = await tab.Page.RunAxe();
        Assert.Empty(result.Violations.Select(v => $"{v.Id}: {v.Help} at {string.Join(", ", v.Nodes.Select(n => n.Html))}"));

        await tab.Page.GetByRole(AriaRole.Button, new() { Name = "Acknowledge: Wait" }).ClickAsync();
        await Assertions.Expect(tab.Page.Locator("#alerts li").First).ToContainTextAsync("(page)");
        Assert.Empty(tab.Complaints);
    }

    [BrowserFact]
    public async Task Link_OfAMessage_AcknowledgesOnAPressOnly()
    {
        await using JobHost host = await JobHost.Start(("mqtt:use", "off"), ("alerts:enabled", "false"));
        string alert = Begin(host);
        string token = host.Services.GetRequiredService<AcknowledgeTokens>().Of(alert);
        AlertStore store = host.Services.GetRequiredService<AlertStore>();
        await using Tab tab = await browser.Open($"{host.Url}/alerts#acknowledge={token}", 390, 844);
        ILocator button = tab.Page.GetByRole(AriaRole.Button, new() { Name = "Acknowledge it" });
        await button.WaitForAsync();
        Assert.Null(store.Newest(1)[0].Acknowledged);

        await button.FocusAsync();
        await tab.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(tab.Page.Locator("#fromLinkText")).ToHaveTextAsync("Acknowledged: Wait");
        Assert.Equal("link", store.Newest(1)[0].AcknowledgedBy);
        Assert.DoesNotContain("acknowledge", tab.Page.Url, StringComparison.Ordinal);
    }

    [BrowserFact]
    public async Task Phone_SubscribesAndUnsubscribes()
    {
        await using JobHost host = await JobHost.Start(("mqtt:use", "off"), ("alerts:enabled", "false"));
        await using Tab tab = await browser.Open(host.Url, 390, 844);
        await tab.SignIn(host.SignInLink, host.Url + "/jobs");
        await tab.Page.AddInitScriptAsync(FakeSubscription);
        await tab.Page.GotoAsync(host.Url + "/alerts");
        await tab.Page.GetByRole(AriaRole.Button, new() { Name = "Send alerts to this phone" }).ClickAsync();
        await Assertions.Expect(tab.Page.Locator("#phoneText")).ToContainTextAsync("is subscribed");
        await Assertions.Expect(tab.Page.Locator("#channels li").First).ToContainTextAsync("1 subscribed");
        await tab.Page.GetByRole(AriaRole.Button, new() { Name = "Send no more to this phone" }).ClickAsync();
        await Assertions.Expect(tab.Page.Locator("#phoneText")).ToHaveTextAsync("This phone is not subscribed.");
        await Assertions.Expect(tab.Page.Locator("#channels li").First).ToContainTextAsync("0 subscribed");
    }

    /// <summary>The worker's own text, with a registration in the place of the browser's, which would need its maker's push service.</summary>
    [BrowserFact]
    public async Task Worker_WhoseSubscriptionTheBrowserReplaced_TellsTheBooth_AndElseThePerson()
    {
        await using JobHost host = await JobHost.Start(("mqtt:use", "off"), ("alerts:enabled", "false"));
        PhoneBook phones = host.Services.GetRequiredService<PhoneBook>();
        await using Tab tab = await browser.Open(host.Url, 390, 844);
        await tab.SignIn(host.SignInLink, host.Url + "/jobs");
        await tab.Page.AddInitScriptAsync(FakeSubscription);
        await tab.Page.GotoAsync(host.Url + "/alerts");
        await tab.Page.GetByLabel("Name of this phone").FillAsync("bench");
        await tab.Page.GetByRole(AriaRole.Button, new() { Name = "Send alerts to this phone" }).ClickAsync();
        await Assertions.Expect(tab.Page.Locator("#phoneText")).ToContainTextAsync("is subscribed");
        string worker = await host.Text("/worker.js");
        Task<string> ChangeAsync(string from, string to) => tab.Page.EvaluateAsync<string>($$"""
            (async () => {
              const listeners = {}, shown = [], asked = [];
              const fresh = { endpoint: "{{to}}", toJSON: () => ({ keys: { p256dh: "BCVxsr7N_eNgVRqvHtD0zTZsEc6-VV-JvLexhqUzORcxaOzi6-AYWXvTBHm4bjyPjs7Vd8pZGH6SRpkNtoIAiw4", auth: "BTBZMqHH6r4Tts7J_aSIgg" } }) };
              const self = {
                addEventListener: (type, listener) => { listeners[type] = listener; },
                registration: { showNotification: async title => { shown.push(title); }, pushManager: { subscribe: async options => { asked.push(options.applicationServerKey.length); return fresh; } } },
              };
              {{worker}}
              let done;
              listeners.pushsubscriptionchange({ oldSubscription: { endpoint: "{{from}}" }, newSubscription: null, waitUntil: promise => { done = promise; } });
              await done;
              return `${asked.join()} ${shown.join()}`;
            })()
            """);

        // The key of the booth in base64url has 87 letters.
        Assert.Equal("87 ", await ChangeAsync("https://push.example/phone", "https://push.example/renewed"));
        PhoneSubscription phone = Assert.Single(phones.All());
        Assert.Equal(("https://push.example/renewed", "bench"), (phone.Endpoint, phone.Name));

        // Signed out, the booth takes nothing, and the phone says so.
        await tab.Page.Context.ClearCookiesAsync();
        Assert.Equal("87 No more alerts on this phone", await ChangeAsync("https://push.example/renewed", "https://push.example/again"));
        Assert.Equal("https://push.example/renewed", Assert.Single(phones.All()).Endpoint);
    }

    [BrowserFact]
    public async Task Worker_ShowsAPushedMessageAndReplacesItByItsAllClear()
    {
        await using JobHost host = await JobHost.Start(("mqtt:use", "off"), ("alerts:enabled", "false"));
        await using Tab tab = await browser.Open(host.Url + "/jobs", 390, 844);
        await tab.Page.Context.GrantPermissionsAsync(["notifications"], new() { Origin = host.Url });
        await tab.Page.GotoAsync(host.Url + "/alerts");
        await tab.Page.EvaluateAsync(
            "navigator.serviceWorker.ready.then(r => r.active.state === 'activated' || new Promise(done => r.active.addEventListener('statechange', () => done(true))))");
        ICDPSession devTools = await tab.Page.Context.NewCDPSessionAsync(tab.Page);
        TaskCompletionSource<string> registered = new(TaskCreationOptions.RunContinuationsAsynchronously);
        devTools.Event("ServiceWorker.workerRegistrationUpdated").OnEvent += (_, json) =>
        {
            if (json!.Value.GetProperty("registrations").EnumerateArray().FirstOrDefault() is { ValueKind: System.Text.Json.JsonValueKind.Object } first)
            {
                registered.TrySetResult(first.GetProperty("registrationId").GetString()!);
            }
        };
        await devTools.SendAsync("ServiceWorker.enable");
        string registration = await registered.Task.WaitAsync(Patience);
        const string Expires = "2999-01-01T00:00:00Z";
        async Task PushAsync(string data) => await devTools.SendAsync(
            "ServiceWorker.deliverPushMessage", new() { ["origin"] = host.Url, ["registrationId"] = registration, ["data"] = data });
        async Task ShowsAsync(string data, string expected) => await UntilAsync(() => PushAsync(data), Shown, expected);
        Task<string> Shown() => tab.Page.EvaluateAsync<string>(
            "navigator.serviceWorker.ready.then(r => r.getNotifications()).then(all => all.map(n => `${n.title}|${n.tag}|${n.actions.length}`).join(';'))");

        await ShowsAsync($$"""{"type":"alert","level":"urgent","title":"Wait","body":"f","place":"corner","tag":"t","acknowledge":"x.y","expires":"{{Expires}}"}""", "Wait|t|1");
        await ShowsAsync($$"""{"type":"clear","level":"notice","title":"Spray again","body":"f","place":"corner","tag":"t","expires":"{{Expires}}"}""", "All clear: Spray again|t|0");

        // The push service should have dropped it: it may be shown, but not as news.
        await ShowsAsync("""{"type":"alert","level":"urgent","title":"Wait","body":"f","place":"corner","tag":"t","acknowledge":"x.y","expires":"2026-06-03T12:00:00Z"}""", "No longer news: Wait|t|0");
    }

    [BrowserFact]
    public async Task Worker_WhenTheBoothCannotBeReached_SaysWaitAndNoOldVerdict()
    {
        JobHost host = await JobHost.Start(("mqtt:use", "off"), ("alerts:enabled", "false"));
        string url = host.Url;
        await using Tab tab = await browser.Open(url + "/alerts", 390, 844);
        await tab.Page.EvaluateAsync("navigator.serviceWorker.ready.then(() => true)");
        await tab.Page.GotoAsync(url + "/");
        await host.DisposeAsync();
        await tab.Page.GotoAsync(url + "/");

        await Assertions.Expect(tab.Page.Locator("h1")).ToHaveTextAsync("Wait");
        await Assertions.Expect(tab.Page.Locator("body")).ToContainTextAsync("its verdict is not known");
        Assert.Equal(0, await tab.Page.EvaluateAsync<int>("caches.keys().then(keys => keys.length)"));
    }

    private static string Begin(JobHost host)
    {
        Episode episode = new("test", AlertKind.VerdictWorse, AlertLevel.Urgent, TimeProvider.System.GetUtcNow(), "Wait", "f", "a");
        AlertStore store = host.Services.GetRequiredService<AlertStore>();
        store.Enter(
            [
                new(EpisodeStep.Began, episode, "Wait", "f", "a"),
                new(EpisodeStep.Told, episode with { IsTold = true }, "Wait", "dew point 17.8 °C, 0.6 °C over what this mix holds", "raise retarder to 9 % or wait"),
            ],
            TimeProvider.System.GetUtcNow(),
            []);
        return store.Newest(1)[0].Id;
    }

    // A push service hands a message over at least once, and so is it done here: a worker that is being started, on a machine that is busy,
    // may miss the first. However often it comes, there is one notification.
    private static async Task UntilAsync(Func<Task> push, Func<Task<string>> shown, string expected)
    {
        long start = TimeProvider.System.GetTimestamp();
        string last = "";
        for (int look = 0; TimeProvider.System.GetElapsedTime(start) < Patience; look++)
        {
            if (look % LooksAPush == 0)
            {
                await push();
            }

            last = await shown();
            if (last == expected)
            {
                return;
            }

            await Task.Delay(TimeSpan.FromMilliseconds(100), TimeProvider.System);
        }

        Assert.Equal(expected, last);
    }
}
