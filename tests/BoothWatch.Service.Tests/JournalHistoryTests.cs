using System.Net;
using System.Text.Json;
using System.Xml.Linq;
using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Page;
using BoothWatch.Service.Tests.Outputs.Series;
using BoothWatch.Service.Tests.Page;

namespace BoothWatch.Service.Tests;

/// <summary>The journal behind the page, with a file that is no database.</summary>
public sealed class JournalHistoryTests : IDisposable
{
    private static readonly HttpClient Http = new();
    private readonly JournalFolder _folder = new();

    public JournalHistoryTests() => File.WriteAllText(_folder.Location.Path, new string('x', 8192));

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task History_JournalDamaged_IsUnavailableWithTheJournalsOwnWords()
    {
        await using ShopPage shop = await ShopPage.Start(history: new JournalHistory(_folder.Query));
        using HttpResponseMessage answer = await Http.GetAsync(new Uri(shop.Url + "/api/history"));

        Assert.Equal(HttpStatusCode.ServiceUnavailable, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        JsonElement problem = JsonDocument.Parse(await answer.Content.ReadAsStringAsync()).RootElement;
        Assert.Equal(OwnWords(), problem.GetProperty("detail").GetString());
        Assert.StartsWith($"{_folder.Location.Path} is damaged", problem.GetProperty("detail").GetString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(320, 200)]
    [InlineData(720, 330)]
    public async Task Chart_JournalDamaged_IsAPictureThatSaysSo(int width, int height)
    {
        await using ShopPage shop = await ShopPage.Start(history: new JournalHistory(_folder.Query));
        using HttpResponseMessage answer = await Http.GetAsync(new Uri($"{shop.Url}/chart.svg?width={width}&height={height}"));

        Assert.Equal(HttpStatusCode.ServiceUnavailable, answer.StatusCode);
        Assert.Equal("image/svg+xml", answer.Content.Headers.ContentType?.MediaType);
        XElement svg = XDocument.Parse(await answer.Content.ReadAsStringAsync()).Root!;
        string[] words = [.. svg.Descendants(XName.Get("text", "http://www.w3.org/2000/svg")).Select(t => t.Value.Trim())];
        Assert.Equal("The past cannot be read now.", words[0]);
        Assert.Equal(OwnWords().Replace(" ", "", StringComparison.Ordinal), string.Concat(words[1..]).Replace(" ", "", StringComparison.Ordinal));
    }

    [Fact]
    public void Read_JournalNotYetWritten_IsEmpty()
    {
        File.Delete(_folder.Location.Path);
        Assert.Empty(((IHistory)new JournalHistory(_folder.Query)).Read(DateTimeOffset.UnixEpoch, DateTimeOffset.UnixEpoch.AddHours(1), 10));
    }

    private string OwnWords() =>
        Assert.Throws<JournalException>(() => _folder.Query.History(DateTimeOffset.UnixEpoch, DateTimeOffset.UnixEpoch.AddHours(1))).Message;
}
