using System.Text.Encodings.Web;
using System.Text.Json;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Advice;

/// <summary>Writes answers as JSON, each on one line.</summary>
internal static class AdviseJson
{
    private static readonly AdviseReplyContext Context = new(new JsonSerializerOptions
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, // ° and µ stay readable; the text goes to no web page
    });

    public static string Write(AdviseAnswer answer, int? row = null, int? line = null)
    {
        AdviseRequest request = answer.Request;
        return JsonSerializer.Serialize(
            new AdviseReply
            {
                Row = row,
                Line = line,
                Verdict = answer.Verdict.Word(),
                RetarderPct = Rounded(answer.Film?.RecommendedRetarderPct),
                RetarderMl = Rounded(answer.Film?.RecommendedRetarderMl),
                RetarderToAddMl = Rounded(answer.Film?.RetarderToAddMl),
                DewPointC = Rounded(answer.Air.DewPointC),
                DewPointUncertaintyC = Rounded(answer.Air.DewPointUncertaintyC),
                CriticalHumidityPct = Rounded(answer.Film?.CriticalHumidityPct),
                CriticalDewPointC = Rounded(answer.Film?.CriticalDewPointC),
                BlushMarginC = Rounded(answer.Film?.BlushMarginC),
                MarginUncertaintyC = Rounded(answer.Film?.MarginUncertaintyC),
                LowestFilmTemperatureC = Rounded(answer.Film?.LowestFilmTemperatureC),
                TimeToSetS = Rounded(answer.Film?.TimeToSetS),
                WaterAtSetGPerM2 = Rounded(answer.Film?.WaterAtSetGPerM2),
                FiguresForRetarderPct = Rounded(answer.Film?.RetarderPct),
                MarginAtHighestRetarderC = Rounded(answer.Film?.MarginAtHighestRetarderC),
                SolventTrappingRisk = answer.Film?.SolventTrappingRisk,
                PieceTargetC = Rounded(answer.Warming.TargetC),
                PieceWarmInS = Rounded(answer.Warming.State == WarmingState.Warm ? 0 : answer.Warming.LeftS),
                PieceWarmInLeastS = Rounded(answer.Warming.State == WarmingState.Warm ? 0 : answer.Warming.LeastS),
                PieceWarmInMostS = Rounded(answer.Warming.State == WarmingState.Warm ? 0 : answer.Warming.MostS),
                Reasons = [.. answer.Reasons.Select(reason => new AdviseReplyReason(reason.Rule, reason.Limit.Word(), reason.Finding, reason.Action))],
                NotMeasured = AdviseAnswer.NotMeasured,
                Assumed = request.Assumed,
                Inputs = new AdviseReplyInputs
                {
                    TemperatureC = Rounded(answer.Air.TemperatureC),
                    RelativeHumidityPct = Rounded(answer.Air.RelativeHumidityPct),
                    PressurePa = Rounded(answer.Air.PressurePa),
                    PieceTemperatureC = Rounded(request.PieceC),
                    Coat = request.Coat.Kind.ToString().ToLowerInvariant(),
                    Mix = answer.Film?.Mix,
                    RetarderPct = Rounded(request.Coat.LoadedRetarderPct),
                    WetFilmUm = Rounded(request.Coat.WetFilmUm!.Value),
                    AirSpeedMPerS = Rounded(request.Coat.AirSpeedMPerS),
                    ThicknessMm = Rounded(answer.ThicknessMm),
                    CupMl = Rounded(request.Coat.CupMl),
                    Substrate = answer.Substrate,
                    TemperatureToleranceC = Rounded(request.TemperatureToleranceC),
                    HumidityTolerancePct = Rounded(request.HumidityTolerancePct),
                    RequiredMarginC = Rounded(answer.RequiredMarginC),
                },
                Caution = AdviseAnswer.Caution,
            },
            Context.AdviseReply);
    }

    public static string WriteErrors(IEnumerable<ArgumentError> errors, int row, int line) => JsonSerializer.Serialize(
        new AdviseReplyError(
            row,
            line,
            Verdict.Wait.Word(),
            [.. errors.Select(error => new AdviseReplyFieldError(error.Field.Length == 0 ? null : error.Field, error.Value, error.InTable))]),
        Context.AdviseReplyError);

    private static double Rounded(double value) => Math.Round(value, 3);

    private static double? Rounded(double? value) => value is { } known ? Rounded(known) : null;
}
