using System.IO.Compression;
using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using BoothWatch.Service.Page;

namespace BoothWatch.Service.Tests.Page;

/// <summary>What the first load weighs on the wire, and that nothing is sent twice. The browser counts it once more in its own tests.</summary>
public sealed partial class PageWeightTests
{
    private const int MostBytes = 200_000;
    private static readonly HttpClient Http = new(new HttpClientHandler { AutomaticDecompression = DecompressionMethods.None });

    [Theory]
    [InlineData("br")]
    [InlineData("gzip")]
    public async Task FirstLoad_Compressed_IsBelow200Kilobytes(string coding)
    {
        await using ShopPage shop = await ShopPage.Start(history: new SampleHistory(TimeProvider.System));
        await shop.Show(Samples.Wordy);
        string[] addresses = ["/", "/access.js", .. PageAssets.OfTheGlance.Select(name => "/" + name), .. PageAssets.OfTheChartLibrary.Select(name => "/chart/" + name), "/api/history?shape=columns&points=1500"];
        int sum = 0;
        foreach (string address in addresses)
        {
            byte[] body = await Ask(shop, address, coding);
            sum += body.Length;
        }

        Assert.InRange(sum, 10_000, MostBytes);
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/page.js")]
    [InlineData("/page.css")]
    [InlineData("/api/now")]
    [InlineData("/chart.svg")]
    public async Task Answer_Asked_IsPackedWithBrotliAndUnpacksToThePlainOne(string address)
    {
        await using ShopPage shop = await ShopPage.Start(history: new SampleHistory(TimeProvider.System));
        await shop.Show(Samples.Spray);
        using MemoryStream unpacked = new();
        using (BrotliStream brotli = new(new MemoryStream(await Ask(shop, address, "br")), CompressionMode.Decompress))
        {
            await brotli.CopyToAsync(unpacked);
        }

        string plain = Encoding.UTF8.GetString(await Ask(shop, address, null));
        Assert.Equal(Steady(plain), Steady(Encoding.UTF8.GetString(unpacked.ToArray())));
    }

    [Fact]
    public async Task Stream_IsNeverHeldUpByACompressor()
    {
        await using ShopPage shop = await ShopPage.Start();
        using HttpRequestMessage request = new(HttpMethod.Get, shop.Url + "/api/view");
        request.Headers.TryAddWithoutValidation("Accept-Encoding", "br, gzip");
        using HttpResponseMessage answer = await Http.SendAsync(request, HttpCompletionOption.ResponseHeadersRead);
        Assert.DoesNotContain(answer.Content.Headers.ContentEncoding, coding => coding is "br" or "gzip");
    }

    [Fact]
    public async Task File_TheBrowserHas_IsNotSentAgain()
    {
        await using ShopPage shop = await ShopPage.Start();
        using HttpResponseMessage first = await Http.GetAsync(new Uri(shop.Url + "/page.js"));
        using HttpRequestMessage again = new(HttpMethod.Get, shop.Url + "/page.js");
        again.Headers.IfNoneMatch.Add(first.Headers.ETag!);
        using HttpResponseMessage second = await Http.SendAsync(again);
        // RFC 9110, section 15.4.5.
        Assert.Equal(HttpStatusCode.NotModified, second.StatusCode);
        Assert.Empty(await second.Content.ReadAsByteArrayAsync());
    }

    [ChartLibraryFact]
    public async Task ChartLibrary_OfTheBuild_IsServedWithItsLicence()
    {
        await using ShopPage shop = await ShopPage.Start();
        Assert.Contains("v1.6.32", Encoding.UTF8.GetString(await Ask(shop, "/chart/uplot.js", null))[..100], StringComparison.Ordinal);
        // The MIT licence asks for the notice in every copy.
        Assert.Contains("Permission is hereby granted", Encoding.UTF8.GetString(await Ask(shop, "/chart/uplot-licence.txt", null)), StringComparison.Ordinal);
        Assert.Contains("data-charts=\"library\"", Encoding.UTF8.GetString(await Ask(shop, "/", null)), StringComparison.Ordinal);
    }

    // What changes from one moment to the next: ages and clocks.
    private static string Steady(string text) => Changing().Replace(text, "");

    [GeneratedRegex("""(data-sent="\d+"|"(ageS|sentS)":[0-9.]+)""")]
    private static partial Regex Changing();

    private static async Task<byte[]> Ask(ShopPage shop, string address, string? coding)
    {
        using HttpRequestMessage request = new(HttpMethod.Get, shop.Url + address);
        if (coding is not null)
        {
            request.Headers.AcceptEncoding.ParseAdd(coding);
        }

        using HttpResponseMessage answer = await Http.SendAsync(request);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal(coding is null ? [] : [coding], answer.Content.Headers.ContentEncoding);
        return await answer.Content.ReadAsByteArrayAsync();
    }
}
