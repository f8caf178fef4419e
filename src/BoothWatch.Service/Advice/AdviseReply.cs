using System.Text.Json.Serialization;

namespace BoothWatch.Service.Advice;

/// <summary>One answer as <c>--json</c> writes it; docs/advise.schema.json says what each member means.</summary>
internal sealed record AdviseReply
{
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public int? Row { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public int? Line { get; init; }

    public required string Verdict { get; init; }

    public required double? RetarderPct { get; init; }

    public required double? RetarderMl { get; init; }

    public required double? RetarderToAddMl { get; init; }

    public required double DewPointC { get; init; }

    public required double DewPointUncertaintyC { get; init; }

    public required double? CriticalHumidityPct { get; init; }

    public required double? CriticalDewPointC { get; init; }

    public required double? BlushMarginC { get; init; }

    public required double? MarginUncertaintyC { get; init; }

    public required double? LowestFilmTemperatureC { get; init; }

    public required double? TimeToSetS { get; init; }

    public required double? WaterAtSetGPerM2 { get; init; }

    public required double? FiguresForRetarderPct { get; init; }

    public required double? MarginAtHighestRetarderC { get; init; }

    public required bool? SolventTrappingRisk { get; init; }

    public required double PieceTargetC { get; init; }

    public required double? PieceWarmInS { get; init; }

    public required double? PieceWarmInLeastS { get; init; }

    public required double? PieceWarmInMostS { get; init; }

    public required IReadOnlyList<AdviseReplyReason> Reasons { get; init; }

    public required IReadOnlyList<string> NotMeasured { get; init; }

    public required IReadOnlyList<string> Assumed { get; init; }

    public required AdviseReplyInputs Inputs { get; init; }

    public required string Caution { get; init; }
}

/// <summary>One reason of an answer.</summary>
internal sealed record AdviseReplyReason(string Rule, string Limit, string Finding, string Action);

/// <summary>The values that an answer belongs to.</summary>
internal sealed record AdviseReplyInputs
{
    public required double TemperatureC { get; init; }

    public required double RelativeHumidityPct { get; init; }

    public required double PressurePa { get; init; }

    public required double PieceTemperatureC { get; init; }

    public required string Coat { get; init; }

    public required string? Mix { get; init; }

    public required double? RetarderPct { get; init; }

    public required double WetFilmUm { get; init; }

    public required double AirSpeedMPerS { get; init; }

    public required double ThicknessMm { get; init; }

    public required double CupMl { get; init; }

    public required string Substrate { get; init; }

    public required double TemperatureToleranceC { get; init; }

    public required double HumidityTolerancePct { get; init; }

    public required double RequiredMarginC { get; init; }
}

/// <summary>A table row that could not be answered. Its verdict is wait: not knowing is never spray.</summary>
internal sealed record AdviseReplyError(int Row, int Line, string Verdict, IReadOnlyList<AdviseReplyFieldError> Errors);

/// <summary>What is wrong with one cell; no value when the cell is blank, no field when the row itself cannot be read.</summary>
internal sealed record AdviseReplyFieldError(string? Field, string? Value, string Message);

/// <summary>Writers for the replies, generated at build time so that a single answer starts fast.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(AdviseReply))]
[JsonSerializable(typeof(AdviseReplyError))]
internal sealed partial class AdviseReplyContext : JsonSerializerContext;
