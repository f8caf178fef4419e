using BoothWatch.Alerts;
using BoothWatch.Service.Alerts;
using BoothWatch.Service.Outputs.Alerts;
using BoothWatch.Service.Outputs.Alerts.WebPush;
using BoothWatch.Service.Tests.Outputs.Series;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Options;
using Microsoft.Extensions.Time.Testing;

namespace BoothWatch.Service.Tests.Outputs.Alerts;

/// <summary>Store, outbox and dispatcher over a real journal, with a clock that a test moves.</summary>
internal sealed class AlertBench : IDisposable
{
    private readonly JournalFolder _folder = new();
    private readonly HttpClient _http = HttpDelivery.Client();

    public AlertBench(AlertsOptions? options = null)
    {
        Options = Microsoft.Extensions.Options.Options.Create(options ?? new AlertsOptions());
        Sources = new AlertSources { Shop = "Harbour Lane", Booth = "corner", Limits = new AlertLimits(), Folder = _folder.Folder };
        Journal = new AlertJournal(_folder.Journal(), _folder.Location);
        Store = new AlertStore(Journal, Sources);
        Outbox = new Outbox(Journal);
        Phones = new PhoneBook(Journal);
        Keys = new AlertKeys(Options, Sources);
        Tokens = new AcknowledgeTokens(Keys);
        Links = new AlertLinks(Tokens, Options);
    }

    public FakeTimeProvider Time => _folder.Time;

    public IOptions<AlertsOptions> Options { get; }

    public AlertSources Sources { get; }

    public IAlertJournal Journal { get; }

    public AlertStore Store { get; }

    public Outbox Outbox { get; }

    public PhoneBook Phones { get; }

    public AlertKeys Keys { get; }

    public AcknowledgeTokens Tokens { get; }

    public AlertLinks Links { get; }

    public string Folder => _folder.Folder;

    public WebPushChannel WebPush() => new(Phones, Keys, Tokens, Options, Time);

    public BoothWatch.Service.Outputs.Alerts.Webhook.WebhookChannel Webhook() => new(_http, Links, Options, Time);

    public BoothWatch.Service.Outputs.Alerts.Email.EmailChannel Email() => new(Links, Options, Time);

    public AlertDispatcher Dispatcher(params IAlertChannel[] channels) => Dispatcher(Time, channels);

    public AlertDispatcher Dispatcher(TimeProvider time, params IAlertChannel[] channels) =>
        new(Outbox, channels, time, NullLogger<AlertDispatcher>.Instance, () => 1);

    public AlertMessage Message(AlertMessageType type = AlertMessageType.Alert, string key = "verdict", AlertLevel level = AlertLevel.Urgent) => new()
    {
        Id = AlertIds.New(Time.GetUtcNow()),
        Alert = AlertIds.New(Time.GetUtcNow()),
        Type = type,
        Kind = AlertKind.VerdictWorse,
        Key = key,
        Level = level,
        Shop = "Harbour Lane",
        Booth = "corner",
        Title = "Wait",
        Finding = "dew point 17.8 °C, 0.6 °C over what this mix holds",
        Action = "raise retarder to 9 % or wait",
        Began = Time.GetUtcNow(),
        Time = Time.GetUtcNow(),
        Expires = Time.GetUtcNow().AddMinutes(10),
    };

    /// <summary>An episode begins and is told.</summary>
    public void Begin(string key = "verdict", AlertLevel level = AlertLevel.Urgent, params string[] channels) => Enter(
        channels, Change(EpisodeStep.Began, key, level), Change(EpisodeStep.Told, key, level));

    /// <summary>It is replaced by one of a higher level.</summary>
    public void Worsen(string key = "verdict", params string[] channels) => Enter(
        channels, Change(EpisodeStep.Replaced, key, AlertLevel.Warning), Change(EpisodeStep.Began, key, AlertLevel.Urgent), Change(EpisodeStep.Told, key, AlertLevel.Urgent));

    /// <summary>It is over.</summary>
    public void Clear(string key = "verdict", params string[] channels) => Enter(channels, Change(EpisodeStep.Cleared, key, AlertLevel.Urgent));

    /// <summary>What stands in the outbox: state and type, oldest first.</summary>
    public string[] Rows() => [.. Journal.Read<IReadOnlyList<string>>([], connection => connection.Ask(
        "SELECT channel || ' ' || type || ' ' || state FROM alert_outbox ORDER BY id", row => row.GetString(0)))];

    public static async Task RoundAsync(AlertDispatcher dispatcher)
    {
        dispatcher.Round();
        await dispatcher.IdleAsync();
    }

    public void Dispose()
    {
        _http.Dispose();
        _folder.Dispose();
    }

    private void Enter(string[] channels, params EpisodeChange[] changes) =>
        Store.Enter(changes, Time.GetUtcNow(), [.. channels.Select(channel => (channel, ""))]);

    private EpisodeChange Change(EpisodeStep step, string key, AlertLevel level)
    {
        AlertKind kind = key.StartsWith("timer", StringComparison.Ordinal) ? AlertKind.TimerDue : AlertKind.VerdictWorse;
        Episode episode = new(key, kind, level, Time.GetUtcNow(), "Wait", "the dew point has risen", "wait") { IsTold = step is not EpisodeStep.Began };
        return new EpisodeChange(step, episode, step == EpisodeStep.Cleared ? "Spray again" : "Wait", "the dew point has risen", "wait");
    }
}
