using BoothWatch.Service.Records.Pdf;

namespace BoothWatch.Service.Records;

/// <summary>Maps the addresses of a job's record.</summary>
public static class RecordAddresses
{
    /// <summary>Maps PDF, CSV with its metadata, and JSON. Call it after the page is mapped.</summary>
    public static WebApplication MapRecords(this WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        RecordEndpoints records = app.Services.GetRequiredService<RecordEndpoints>();
        app.MapGet("/api/jobs/{id:long}/record.pdf", records.Pdf)
            .Named("record-pdf", "The environment record of a job, for people", "Query: paper, A4 or Letter; without it record:paper. Its JSON is attached to it.", RecordPdf.MediaType)
            .ProducesProblem(StatusCodes.Status400BadRequest);
        app.MapGet("/api/jobs/{id:long}/record.csv", records.Csv)
            .Named("record-csv", "The coats of the record as a table", "RFC 4180, a row a coat; text that a spreadsheet might take for a formula has an apostrophe before it.", "text/csv");
        app.MapGet("/api/jobs/{id:long}/record.csv-metadata.json", records.Metadata)
            .Named("record-csv-metadata", "What the columns of the table mean", "W3C metadata vocabulary for tabular data; its note holds the whole record.", CsvMetadata.MediaType);
        app.MapGet("/api/jobs/{id:long}/record.json", records.Json)
            .Named("record-json", "The environment record of a job, as data", "docs/record.schema.json; sha256 is taken over record in the canonical form of RFC 8785.", "application/json");
        return app;
    }

    private static RouteHandlerBuilder Named(this RouteHandlerBuilder route, string name, string summary, string description, string mediaType) =>
        route.WithName(name).WithSummary(summary).WithDescription(description)
            .Produces<string>(contentType: mediaType)
            .ProducesProblem(StatusCodes.Status404NotFound)
            .ProducesProblem(StatusCodes.Status503ServiceUnavailable);
}
