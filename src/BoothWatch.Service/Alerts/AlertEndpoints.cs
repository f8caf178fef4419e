using BoothWatch.Service.Jobs;
using BoothWatch.Service.Outputs.Alerts;
using BoothWatch.Service.Outputs.Alerts.WebPush;
using BoothWatch.Service.Outputs.Series;
using Microsoft.Extensions.Options;
using static BoothWatch.Service.Jobs.JsonAnswers;

namespace BoothWatch.Service.Alerts;

/// <summary>What each address under /api/alerts answers.</summary>
internal sealed class AlertEndpoints(
    AlertDesk desk,
    AlertStore store,
    Outbox outbox,
    AlertOutput output,
    PhoneBook phones,
    AlertKeys keys,
    AcknowledgeTokens tokens,
    AlertSources sources,
    IOptions<AlertsOptions> options,
    TimeProvider time)
{
    private const int Listed = 50;
    private const int LongestName = 60;

    public IResult State() => Guard(() =>
    {
        ChannelLine[] lines = [.. desk.Channels.Select(LineOf)];
        DateTimeOffset? quiet = sources.Limits.Quiet?.EndOf(time.GetUtcNow(), time.LocalTimeZone);
        return Json(new AlertsAnswer(options.Value.Enabled, output.IsSession, quiet, lines, store.Newest(Listed)));
    });

    public IResult PushKey() => Guard(() => Json(new { PublicKey = keys.VapidPublic }));

    public Task<IResult> Test(string channel, HttpRequest request, CancellationToken cancel) => WithBody(request, async _ =>
    {
        if (desk.Channels.FirstOrDefault(known => known.Name.Equals(channel, StringComparison.OrdinalIgnoreCase)) is not { } asked)
        {
            return Problem(StatusCodes.Status404NotFound, "No such channel", $"there is no channel {Short(channel)}; give one of {string.Join(", ", desk.Channels.Select(known => known.Name))}");
        }

        if (asked.OffBecause is { } why)
        {
            return Problem(StatusCodes.Status409Conflict, "The channel is off", $"{asked.Name}: {why}");
        }

        (int taken, string? error) = await desk.TestAsync(asked, cancel);
        return Json(new TestAnswer(asked.Name, taken, error));
    }, cancel);

    public Task<IResult> Acknowledge(string id, HttpRequest request, CancellationToken cancel) => WithBody(request, _ => Task.FromResult(
        desk.Acknowledge(id, "page") is { } alert ? Json(alert) : Problem(StatusCodes.Status404NotFound, "No such alert", $"there is no alert {Short(id)}; /api/alerts lists them")), cancel);

    public Task<IResult> AcknowledgeByToken(HttpRequest request, CancellationToken cancel) => WithBody(request, fields =>
    {
        string? token = fields.Text("token", 128, "the text behind #acknowledge= in the link", required: true);
        if (fields.Problem is { } problem)
        {
            return Task.FromResult<IResult>(problem);
        }

        return Task.FromResult(tokens.AlertOf(token) is { } id && desk.Acknowledge(id, "link") is { } alert
            ? Json(new { alert.Title, alert.Acknowledged })
            : Problem(StatusCodes.Status403Forbidden, "No such token", "the link belongs to no alert of this booth, or the alert was cleared away long ago"));
    }, cancel);

    public Task<IResult> Subscribe(HttpRequest request, CancellationToken cancel) => WithBody(request, fields =>
    {
        string endpoint = fields.Text("endpoint", 2048, "https://push.example/abc", required: true) ?? "";
        string p256dh = fields.Text("p256dh", 128, "BCVx...", required: true) ?? "";
        string auth = fields.Text("auth", 64, "BTBZ...", required: true) ?? "";
        string? replaces = fields.Text("replaces", 2048, "https://push.example/old");
        string name = fields.Text("name", LongestName, "phone at the bench") is { Length: > 0 } given ? given : phones.NameOf(replaces) ?? "phone";
        if (fields.Problem is { } problem)
        {
            return Task.FromResult<IResult>(problem);
        }

        if (PhoneBook.Check(endpoint, p256dh, auth) is { } wrong)
        {
            return Task.FromResult<IResult>(JobFields.Of(wrong.Field, wrong.Problem));
        }

        // The old one first, so that a full book does not keep a phone from its own place.
        if (replaces is { Length: > 0 } && replaces != endpoint)
        {
            phones.Remove(replaces);
        }

        return Task.FromResult(phones.Add(endpoint, p256dh, auth, name, time.GetUtcNow()) is { }
            ? Json(new { Subscribed = true })
            : Problem(StatusCodes.Status409Conflict, "Too many phones", $"{PhoneBook.Most} have subscribed, and no more may; unsubscribe one first"));
    }, cancel);

    public Task<IResult> Unsubscribe(HttpRequest request, CancellationToken cancel) => WithBody(request, fields =>
    {
        string endpoint = fields.Text("endpoint", 2048, "https://push.example/abc", required: true) ?? "";
        return Task.FromResult(fields.Problem is { } problem ? problem : Json(new { Subscribed = false, Removed = phones.Remove(endpoint) }));
    }, cancel);

#pragma warning disable CA1859 // the callers put these beside other answers, so they have the common type
    private static IResult Trouble(Exception error) =>
        Problem(StatusCodes.Status503ServiceUnavailable, error is JournalException ? "The journal is not to be had" : "The keys are not to be had", error.Message);
#pragma warning restore CA1859

    private static bool IsTrouble(Exception error) => error is JournalException or AlertDeliveryException or IOException or UnauthorizedAccessException;

    private static string Short(string text) => text.Length <= 60 ? text : text[..57] + "...";

    private static IResult Guard(Func<IResult> work)
    {
        try
        {
            return work();
        }
        catch (Exception e) when (IsTrouble(e))
        {
            return Trouble(e);
        }
    }

    private static async Task<IResult> WithBody(HttpRequest request, Func<JobFields, Task<IResult>> work, CancellationToken cancel)
    {
        JobFields fields = await JobFields.Read(request, cancel);
        try
        {
            return await work(fields);
        }
        catch (Exception e) when (IsTrouble(e))
        {
            return Trouble(e);
        }
    }

    private ChannelLine LineOf(IAlertChannel channel)
    {
        ChannelRecord record = outbox.RecordOf(channel.Name);
        return new ChannelLine(
            channel.Name, channel.OffBecause is null, channel.OffBecause, channel.OffBecause is null ? channel.Targets().Count : 0,
            record.Waiting, record.LastSuccess, record.LastError, record.LastErrorTime);
    }
}
