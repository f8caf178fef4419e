using System.Globalization;
using System.Text.Json;
using BoothWatch.Verdicts;
using BoothWatch.Verdicts.Rules;

namespace BoothWatch.Tests.Verdicts;

/// <summary>docs/verdict.md and config/boothwatch.json say what the code does.</summary>
public class PolicyDocumentTests
{
    private static readonly string Root = FindRoot();

    [Fact]
    public void Document_EveryLimit_HasItsRow()
    {
        string document = File.ReadAllText(Path.Combine(Root, "docs", "verdict.md"));
        Assert.All(PolicyCheck.Limits(), limit => Assert.Contains(
            string.Create(
                CultureInfo.InvariantCulture,
                $"| `{Name(limit.Key)}` | {limit.Limit.Unit} | {limit.Default} | {limit.Limit.Least} to {limit.Limit.Most} | {limit.Limit.Source} |"),
            document,
            StringComparison.Ordinal));
    }

    [Fact]
    public void Document_EveryRule_HasItsRow()
    {
        string document = File.ReadAllText(Path.Combine(Root, "docs", "verdict.md"));
        Assert.All(RuleBook.All, rule => Assert.Contains($"| `{rule.Name}` |", document, StringComparison.Ordinal));
    }

    [Fact]
    public void Configuration_EveryLimit_StandsWithItsDefaultAndRange()
    {
        string text = File.ReadAllText(Path.Combine(Root, "config", "boothwatch.json"));
        using JsonDocument document = JsonDocument.Parse(text, new JsonDocumentOptions { CommentHandling = JsonCommentHandling.Skip });
        JsonElement section = document.RootElement.GetProperty(VerdictPolicy.Section);
        Assert.Equal(typeof(VerdictPolicy).GetProperties().Count(property => property.SetMethod is { IsPublic: true }), section.EnumerateObject().Count());
        Assert.All(PolicyCheck.Limits(), limit =>
        {
            Assert.Equal(limit.Default, section.GetProperty(Name(limit.Key)).GetDouble());
            string before = text[..text.IndexOf($"\"{Name(limit.Key)}\"", StringComparison.Ordinal)];
            string comment = before[before.LastIndexOf("//", StringComparison.Ordinal)..];
            Assert.Contains(
                string.Create(CultureInfo.InvariantCulture, $"Default {limit.Default}. Range {limit.Limit.Least} to {limit.Limit.Most}."),
                comment,
                StringComparison.Ordinal);
        });
    }

    private static string Name(string key) => key[(key.IndexOf(':', StringComparison.Ordinal) + 1)..];

    private static string FindRoot()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "BoothWatch.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new InvalidOperationException("BoothWatch.sln is in no folder above the tests.");
    }
}
