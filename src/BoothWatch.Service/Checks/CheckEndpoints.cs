using BoothWatch.Checks;
using BoothWatch.Service.Assessing;
using BoothWatch.Service.Jobs;
using BoothWatch.Service.Outputs.Series;
using static BoothWatch.Service.Jobs.JsonAnswers;

namespace BoothWatch.Service.Checks;

/// <summary>What each address under /api/checks answers.</summary>
internal sealed class CheckEndpoints(CheckBook book, CheckAnswers answers, SnapshotBoard board)
{
    private static readonly Dictionary<string, int> Salts = SaltPoint.All.Select((salt, place) => (salt.Id, place)).ToDictionary(salt => salt.Id, salt => salt.place);

    public IResult Now() => Json(answers.Now());

    public Task<IResult> Begin(string sensor, HttpRequest request, CancellationToken cancel) =>
        Change(request, _ => () => book.Begin(sensor, board.SpareAgrees(sensor)), cancel);

    public Task<IResult> Jar(string sensor, HttpRequest request, CancellationToken cancel) => Change(request, fields =>
    {
        int? salt = fields.Word("salt", Salts, required: true);
        return () => book.PutInJar(sensor, SaltPoint.All[salt!.Value]);
    }, cancel);

    public Task<IResult> Result(string sensor, HttpRequest request, CancellationToken cancel) =>
        Change(request, _ => () => book.TakeResult(sensor), cancel);

    public Task<IResult> Back(string sensor, HttpRequest request, CancellationToken cancel) => Change(request, fields =>
    {
        bool cancelled = fields.Flag("cancelled");
        bool certain = fields.Flag("certain");
        return () => book.SayBack(sensor, cancelled, certain);
    }, cancel);

    public Task<IResult> Replaced(string sensor, HttpRequest request, CancellationToken cancel) =>
        Change(request, _ => () => book.Replace(sensor), cancel);

    private async Task<IResult> Change(HttpRequest request, Func<JobFields, Action> read, CancellationToken cancel)
    {
        JobFields fields = await JobFields.Read(request, cancel);
        Action change = read(fields);
        if (fields.Problem is { } problem)
        {
            return problem;
        }

        try
        {
            change();
            return Now();
        }
        catch (CheckRefusedException refused)
        {
            return Problem(StatusCodes.Status409Conflict, "Nothing was changed", refused.Message);
        }
        catch (JournalException trouble)
        {
            return Problem(StatusCodes.Status503ServiceUnavailable, "It could not be kept", $"{trouble.Message}. Nothing was changed: leave the sensor where it is");
        }
    }
}
