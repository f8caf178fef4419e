using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace BoothWatch.Page.Tests;

/// <summary>One open page.</summary>
public sealed class Tab : IAsyncDisposable
{
    private readonly IBrowserContext _context;

    public Tab(IBrowserContext context, IPage page)
    {
        _context = context;
        Page = page;
        page.Console += (_, message) =>
        {
            if (message.Type is "error" or "warning")
            {
                Complaints.Add($"{message.Type}: {message.Text} ({message.Location})");
            }
        };
        page.PageError += (_, error) => Complaints.Add("uncaught: " + error);
    }

    public IPage Page { get; }

    /// <summary>Errors and warnings of the console (violations of the content policy are among them) and uncaught exceptions.</summary>
    public List<string> Complaints { get; } = [];

    public ILocator Field(string name) => Page.Locator($"[data-field={name}]");

    public Task<string?> Verdict() => Page.Locator("html").GetAttributeAsync("data-verdict");

    /// <summary>Opens the link that signs in once, and then a page.</summary>
    public async Task SignIn(string link, string then)
    {
        // A link that differs in its fragment alone would not load the page anew.
        await Page.GotoAsync("about:blank");
        await Page.GotoAsync(link);

        // Asked again and again, not awaited as an event: the page may be there before anybody listens.
        await Assertions.Expect(Page).ToHaveURLAsync(new Regex("^[a-z]+://[^/]+/$"), new() { Timeout = 60_000 });
        await Page.GotoAsync(then);
    }

    public async ValueTask DisposeAsync() => await _context.DisposeAsync();
}
