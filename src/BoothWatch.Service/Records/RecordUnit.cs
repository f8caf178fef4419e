namespace BoothWatch.Service.Records;

/// <summary>A unit, in words and by its UN/CEFACT common code (Recommendation 20).</summary>
/// <param name="Symbol">Symbol for people.</param>
/// <param name="Code">Common code.</param>
internal sealed record RecordUnit(string Symbol, string Code)
{
    public static readonly RecordUnit DegreeCelsius = new("°C", "CEL");
    public static readonly RecordUnit Percent = new("%", "P1");
    public static readonly RecordUnit Pascal = new("Pa", "PAL");
    public static readonly RecordUnit Micrometre = new("µm", "4H");
    public static readonly RecordUnit MetrePerSecond = new("m/s", "MTS");
}
