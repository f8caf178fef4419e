using System.Globalization;
using System.Text;
using BoothWatch.Service.Advice;
using BoothWatch.Verdicts;
using BoothWatch.Verdicts.Rules;

namespace BoothWatch.Service.Commands.Advise;

/// <summary>Writes answers for a finisher: the verdict first, then why, then the numbers.</summary>
internal static class AdviseText
{
    /// <summary>Header of the table.</summary>
    public static string TableHeader(TemperatureUnit unit) =>
        "line  verdict     air °C   RH %  dew °C  piece °C  coat    retarder  critical RH   margin °C  why"
            .Replace("°C", unit.Symbol(), StringComparison.Ordinal);

    /// <summary>One answer on several lines.</summary>
    public static string Write(AdviseAnswer answer, TemperatureUnit unit)
    {
        TemperatureText degrees = new(unit);
        AdviseRequest request = answer.Request;
        AirFindings air = answer.Air;
        var text = new StringBuilder();
        Line(text, $"{answer.Verdict.Word().ToUpperInvariant()}: {Kind(request)} coat, {Headline(answer)}");
        foreach (Reason reason in answer.Reasons)
        {
            Line(text, $"  {reason.Limit.Word()}: {reason}");
        }

        Line(text, $"");
        Line(text, $"Air                {degrees.Of(air.TemperatureC)}, {air.RelativeHumidityPct:0.#} %RH, {air.PressurePa / 100:0} hPa");
        Line(text, $"Dew point          {degrees.Of(air.DewPointC)} (standard uncertainty {unit.FromCelsiusDifference(air.DewPointUncertaintyC):0.0} {unit.Symbol()})");
        Line(text, $"Piece              {degrees.Of(request.PieceC)}, {answer.Substrate}, {answer.ThicknessMm:0.#} mm");
        if (answer.Warming is { State: WarmingState.Warming } warming)
        {
            Line(text, $"Piece warm         {degrees.AtLeast(warming.TargetC)}, in this air {WarmingText.Time(warming)}, air on both faces");
        }

        if (answer.Film is { } film)
        {
            Line(text, $"Cup                {film.Mix}");
            Line(text, $"Film               {request.Coat.WetFilmUm:0.#} µm wet, air at {request.Coat.AirSpeedMPerS:0.##} m/s");
            Line(text, $"");
            Line(text, $"With {film.RetarderPct:0.#} % retarder:");
            Line(text, $"Critical humidity  {film.CriticalHumidityPct:0.0} % at this temperature (dew point {degrees.Of(film.CriticalDewPointC)})");
            Line(text, $"Blush margin       {unit.FromCelsiusDifference(film.BlushMarginC):+0.0;-0.0;0.0} {unit.Symbol()} (standard uncertainty {unit.FromCelsiusDifference(film.MarginUncertaintyC):0.0} {unit.Symbol()})");
            Line(text, $"Coldest film       {degrees.Of(film.LowestFilmTemperatureC)}");
            Line(text, $"Sets in            {(film.TimeToSetS is { } seconds ? Duration(seconds) : "more than the longest run of the model")}");
            Line(text, $"Water at set       {film.WaterAtSetGPerM2:0.00} g/m²");
        }

        Line(text, $"");
        foreach (string assumption in request.Assumed)
        {
            Line(text, $"Assumed: {assumption}.");
        }

        Line(text, $"Tolerances: ±{unit.FromCelsiusDifference(request.TemperatureToleranceC):0.##} {unit.Symbol()}, ±{request.HumidityTolerancePct:0.##} %RH. Not measured here: {string.Join(", ", AdviseAnswer.NotMeasured)}.");
        text.Append(AdviseAnswer.Caution);
        return text.ToString();
    }

    /// <summary>One answer on one aligned line.</summary>
    public static string WriteRow(AdviseAnswer answer, TemperatureUnit unit, int line)
    {
        AirFindings air = answer.Air;
        string start = Invariant($"{line,4}  {answer.Verdict.Word(),-9}  {unit.FromCelsius(air.TemperatureC),7:0.0}  {air.RelativeHumidityPct,5:0.0}  {unit.FromCelsius(air.DewPointC),6:0.0}  {unit.FromCelsius(answer.Request.PieceC),8:0.0}  {Kind(answer.Request),-6}");
        if (answer.Film is not { } film)
        {
            return $"{start}  {"-",8}  {"-",11}  {"-",10}  {answer.Reasons[0]}";
        }

        string retarder = film.RecommendedRetarderPct is { } level ? Invariant($"{level:0.#} %") : "none";
        string critical = Invariant($"{film.CriticalHumidityPct:0.0} %");
        string margin = Invariant($"{unit.FromCelsiusDifference(film.BlushMarginC):+0.0;-0.0;0.0} ±{unit.FromCelsiusDifference(film.MarginUncertaintyC):0.0}");
        return $"{start}  {retarder,8}  {critical,11}  {margin,10}  {answer.Reasons[0]}";
    }

    /// <summary>A row that could not be answered, on one line.</summary>
    public static string WriteErrorRow(IEnumerable<ArgumentError> errors, int line) =>
        Invariant($"{line,4}  {"error",-9}  {string.Join("; ", errors.Select(error => error.InTable))}");

    private static string Kind(AdviseRequest request) => request.Coat.Kind.ToString().ToLowerInvariant();

    // Where the mix is not what stops the coat, what stops it comes first.
    private static string Headline(AdviseAnswer answer) =>
        answer.Verdict != Verdict.Spray && answer.Film is { RecommendedRetarderPct: not null, RetarderToAddMl: 0 }
            ? answer.Reasons[0].Finding
            : RetarderAdvice(answer);

    private static string RetarderAdvice(AdviseAnswer answer)
    {
        if (answer.Film is not { } film)
        {
            return "the model has no answer";
        }

        // The reason says the rest.
        if (answer.Reasons.Any(reason => reason.Rule == SpareRetarder.RuleName))
        {
            return $"in the cup {RetarderText.Level(film.LoadedRetarderPct ?? 0)}: enough";
        }

        string loaded = film is { LoadedRetarderPct: > 0 and { } level, RetarderToAddMl: null or > 0 } ? $"{RetarderText.Level(level)} retarder in the cup; " : "";
        return loaded + RetarderDose.Advice(film);
    }

    private static string Duration(double seconds)
    {
        var time = TimeSpan.FromSeconds(Math.Round(seconds));
        return time.TotalMinutes < 1 ? Invariant($"{time.Seconds} s") : Invariant($"{(int)time.TotalMinutes} min {time.Seconds:00} s");
    }

    private static void Line(StringBuilder text, FormattableString line) =>
        text.Append(line.ToString(CultureInfo.InvariantCulture)).Append('\n');

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
