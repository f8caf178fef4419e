using System.Text.Json;
using BoothWatch.Service.Records;
using BoothWatch.Service.Tests.Jobs;

namespace BoothWatch.Service.Tests.Records;

/// <summary>The addresses of the record over a real server.</summary>
public sealed class RecordAddressTests
{
    [Fact]
    public async Task Addresses_OfOneJob_GiveTheSameRecordInEveryForm()
    {
        await using JobHost host = await JobHost.Start();
        await host.Post("/api/jobs", """{ "piece": "=side table" }""");
        await host.Post("/api/jobs/1/coats", "{}");
        await host.Post("/api/coats/1/stop", "{}");
        await host.Post("/api/jobs/1/finish", "{}");
        using HttpClient http = new() { BaseAddress = new Uri(host.Url) };

        (string? json, byte[] jsonBytes) = await Get(http, "/api/jobs/1/record.json");
        (string? csv, byte[] csvBytes) = await Get(http, "/api/jobs/1/record.csv");
        (string? metadata, byte[] metadataBytes) = await Get(http, "/api/jobs/1/record.csv-metadata.json");
        (string? pdf, byte[] pdfBytes) = await Get(http, "/api/jobs/1/record.pdf?paper=Letter");
        Assert.Equal(("application/json", "text/csv", "application/csvm+json", "application/pdf"), (json, csv, metadata, pdf));
        RecordSchemaTests.Valid(jsonBytes);
        RecordCheck check = RecordVerifier.Json(jsonBytes);
        Assert.True(check.Matches, check.Finding);
        Assert.True(RecordVerifier.Csv(csvBytes, metadataBytes).Matches);
        Assert.Equal("%PDF-"u8.ToArray(), pdfBytes[..5]);
        Assert.True(check.Document!.Value.GetProperty("record").GetProperty("isDemo").GetBoolean());

        using HttpResponseMessage table = await http.GetAsync("/api/jobs/1/record.csv");
        Assert.Contains("<record.csv-metadata.json>; rel=\"describedby\"", table.Headers.GetValues("Link").Single(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Address_OfNoJobOrWithAWrongPaper_IsRefusedWithTheFix()
    {
        await using JobHost host = await JobHost.Start();
        Assert.Equal(404, await host.Status("/api/jobs/9/record.pdf"));
        Assert.Equal(404, await host.Status("/api/jobs/9/record.csv"));
        await host.Post("/api/jobs", """{ "piece": "side table" }""");
        Assert.Equal(400, await host.Status("/api/jobs/1/record.pdf?paper=A3"));
        Assert.Equal(200, await host.Status("/api/jobs/1/record.pdf"));
        JsonElement paths = (await host.Get("/api/openapi.json")).GetProperty("paths");
        Assert.Equal("record-pdf", paths.GetProperty("/api/jobs/{id}/record.pdf").GetProperty("get").GetProperty("operationId").GetString());
    }

    private static async Task<(string? Type, byte[] Bytes)> Get(HttpClient http, string address)
    {
        using HttpResponseMessage answer = await http.GetAsync(address);
        Assert.True(answer.IsSuccessStatusCode, address);
        return (answer.Content.Headers.ContentType?.MediaType, await answer.Content.ReadAsByteArrayAsync());
    }
}
