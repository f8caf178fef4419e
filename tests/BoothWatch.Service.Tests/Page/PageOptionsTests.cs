using System.Net;
using System.Net.Sockets;
using BoothWatch.Service.Page;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Tests.Page;

public sealed class PageOptionsTests
{
    [Fact]
    public void Defaults_AreValid() => Assert.True(new PageOptionsValidator().Validate(null, new PageOptions()).Succeeded);

    [Fact]
    public void Mistakes_AreAllNamedWithKeyValueRangeAndExample()
    {
        ValidateOptionsResult result = new PageOptionsValidator().Validate(null, new PageOptions { Url = "ftp://x", ChartHours = 0 });
        Assert.Equal(
            [
                "page:url is ftp://x; give http://ADDRESS:PORT or https://ADDRESS:PORT with a numeric address or localhost, for example http://127.0.0.1:5080",
                "page:chartHours is 0; give hours from 0.1 to 72, for example 6",
            ],
            result.Failures);
    }

    [Theory]
    [InlineData("http://127.0.0.1:5080", "127.0.0.1:5080")]
    [InlineData("http://0.0.0.0:80/", "0.0.0.0:80")]
    [InlineData("http://localhost:1234", "127.0.0.1:1234")]
    [InlineData("http://[::1]:5080", "[::1]:5080")]
    [InlineData("http://127.0.0.1:0", "127.0.0.1:0")]
    [InlineData("https://127.0.0.1:5443", "127.0.0.1:5443")]
    [InlineData("http://booth.example:5080", null)]
    [InlineData("http://127.0.0.1:5080/page", null)]
    [InlineData("http://127.0.0.1:70000", null)]
    [InlineData("5080", null)]
    [InlineData("", null)]
    [InlineData(null, null)]
    public void Url_IsReadOrRefused(string? url, string? endPoint) => Assert.Equal(endPoint, PageAddress.Parse(url)?.ToString());

    [Fact]
    public async Task Port_InUse_IsExplainedWithTheSettingAndAFix()
    {
        using TcpListener other = new(IPAddress.Loopback, 0);
        other.Start();
        string url = $"http://{other.LocalEndpoint}";
        Exception exception = await Assert.ThrowsAnyAsync<Exception>(() => ShopPage.Start(url));
        Assert.Equal(
            $"page:url is {url}, but another program already listens there; stop it, or give another port, for example http://127.0.0.1:5081",
            PageAddress.ExplainFailure(exception, url));
    }

    [Fact]
    public async Task Address_OfAnotherMachine_IsExplained()
    {
        // 192.0.2.0/24 is kept for documentation (RFC 5737): no machine has it.
        Exception exception = await Assert.ThrowsAnyAsync<Exception>(() => ShopPage.Start("http://192.0.2.1:5080", settings: ("access:reading", "open")));
        Assert.Contains("this machine has no such address", PageAddress.ExplainFailure(exception, "http://192.0.2.1:5080"), StringComparison.Ordinal);
    }

    [Fact]
    public void OtherFailure_IsNotExplainedAway() => Assert.Null(PageAddress.ExplainFailure(new InvalidOperationException("x"), "http://127.0.0.1:5080"));
}
