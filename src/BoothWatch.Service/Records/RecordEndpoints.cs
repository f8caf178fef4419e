using BoothWatch.Service.Outputs.Series;
using BoothWatch.Service.Page;
using BoothWatch.Service.Records.Pdf;

namespace BoothWatch.Service.Records;

/// <summary>What the addresses of a job's record answer.</summary>
internal sealed class RecordEndpoints(RecordMaker maker, RecordPdf pdf, OneAtATime turns)
{
    /// <summary>Names of table and metadata, so that the one finds the other wherever both are saved.</summary>
    private const string Table = "record.csv";

    public async Task<IResult> Pdf(long id, HttpContext context)
    {
        QueryText query = new(context.Request.Query);
        string? paper = context.Request.Query.ContainsKey("paper") ? query.Word("paper", RecordPaper.A4, RecordPaper.Letter) : null;
        return query.Problem ?? await Of(id, context, document =>
        {
            context.Response.Headers.ContentDisposition = $"inline; filename=\"record-job-{id}.pdf\"";
            return TypedResults.Bytes(pdf.Write(document, paper), RecordPdf.MediaType);
        });
    }

    public Task<IResult> Csv(long id, HttpContext context) => Of(id, context, document =>
    {
        // RFC 8288, and 5.2 of the W3C's "Model for Tabular Data and Metadata on the Web".
        context.Response.Headers.Link = $"<{Table}{CsvMetadata.Suffix}>; rel=\"describedby\"; type=\"{CsvMetadata.MediaType}\"";
        return TypedResults.Bytes(RecordCsv.Write(document), RecordCsv.MediaType);
    });

    public Task<IResult> Metadata(long id, HttpContext context) => Of(id, context, document => TypedResults.Bytes(CsvMetadata.Write(document, Table), CsvMetadata.MediaType));

    public Task<IResult> Json(long id, HttpContext context) => Of(id, context, document => TypedResults.Bytes(document.Json(), "application/json"));

    // Gathering and writing in one turn.
    private Task<IResult> Of(long id, HttpContext context, Func<RecordDocument, IResult> write) => turns.Do(() => Of(id, write), context.RequestAborted);

    private IResult Of(long id, Func<RecordDocument, IResult> write)
    {
        try
        {
            return maker.Of(id) is { } document
                ? write(document)
                : TypedResults.Problem(title: "No such job", detail: $"job {id} does not exist; /api/jobs lists them", statusCode: StatusCodes.Status404NotFound);
        }
        catch (JournalException trouble)
        {
            return TypedResults.Problem(title: "The journal is not to be had", detail: trouble.Message, statusCode: StatusCodes.Status503ServiceUnavailable);
        }
    }
}
