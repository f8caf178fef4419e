using System.Text.Json;
using BoothWatch.Service.Jobs;
using BoothWatch.Service.Tests.Jobs;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Playwright;

namespace BoothWatch.Page.Tests;

/// <summary>Handing over the piece: its environment record, taken from the page of the job.</summary>
[Collection(BrowserTests.Name)]
public sealed class RecordTests(Browser browser)
{
    [BrowserTheory]
    [InlineData(390, 844)]
    [InlineData(1280, 800)]
    public async Task Record_OfAFinishedJob_IsTakenFromItsPage(int width, int height)
    {
        await using JobHost host = await JobHost.Start(("jobs:demoPast", "true"));
        host.Services.GetServices<IHostedService>().OfType<DemoPast>().Single().Create(CancellationToken.None);
        JsonElement job = (await host.Get("/api/jobs?running=false")).GetProperty("rows")[0];
        await using Tab tab = await browser.Open($"{host.Url}/jobs?id={job.GetProperty("id").GetInt64()}", width, height);

        byte[] pdf = await Take(tab, "PDF");
        Assert.Equal("%PDF-"u8.ToArray(), pdf[..5]);
        JsonElement record = JsonDocument.Parse(await Take(tab, "JSON")).RootElement.GetProperty("record");
        Assert.Equal(job.GetProperty("piece").GetString(), record.GetProperty("job").GetProperty("details").GetProperty("piece").GetString());
        Assert.NotEmpty(record.GetProperty("coats").EnumerateArray());
        Assert.Equal(record.GetProperty("coats").GetArrayLength(), System.Text.Encoding.UTF8.GetString(await Take(tab, "CSV")).Trim().Split('\n').Length - 1);
        await Pictures.Keep(tab, $"record-{width}");
        Assert.Empty(tab.Complaints);
    }

    private static async Task<byte[]> Take(Tab tab, string name)
    {
        ILocator link = tab.Page.Locator("#record").GetByRole(AriaRole.Link, new() { Name = name, Exact = true });
        await link.FocusAsync();
        await Assertions.Expect(link).ToBeFocusedAsync();
        IAPIResponse answer = await tab.Page.APIRequest.GetAsync(await link.EvaluateAsync<string>("link => link.href"));
        Assert.Equal(200, answer.Status);
        return await answer.BodyAsync();
    }
}
