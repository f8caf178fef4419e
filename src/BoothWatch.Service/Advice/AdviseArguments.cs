namespace BoothWatch.Service.Advice;

/// <summary>All arguments of <c>advise</c>: one list for the command line, the table and the documentation.</summary>
internal static class AdviseArguments
{
    public static readonly AdviseArgument Temperature = Number(
        "temperature", "Air temperature", Measures.Temperature, "none: it must be given", "24C");

    public static readonly AdviseArgument Humidity = Number(
        "humidity", "Relative humidity", Measures.Humidity, "none: give this or --dew-point", "55%");

    public static readonly AdviseArgument DewPoint = Number(
        "dew-point", "Dew point, instead of the humidity", Measures.DewPoint, "none: give this or --humidity", "14.5C");

    public static readonly AdviseArgument Pressure = Number(
        "pressure", "Air pressure at the booth, not reduced to sea level", Measures.Pressure, "1013.25 hPa, or that of booth:altitudeM", "1013hPa");

    public static readonly AdviseArgument Piece = Number(
        "piece", "Surface temperature of the piece", Measures.Temperature, "the air temperature", "22C");

    public static readonly AdviseArgument Thickness = Number(
        "thickness", "Thickness of the whole piece: how long a cold one takes to warm", Measures.Thickness, "coat:pieceThicknessMm of the configuration, as shipped that of the substrate", "40mm");

    public static readonly AdviseArgument Coat = new(
        "coat", "kind", "Kind of coat", "one of flash, clear, colour, sealer", "coat:kind of the configuration, as shipped clear", "clear");

    public static readonly AdviseArgument Lacquer = Number(
        "lacquer", "Parts of lacquer", Measures.Parts, "by coat: 1", "1");

    public static readonly AdviseArgument Thinner = Number(
        "thinner", "Parts of thinner", Measures.Parts, "by coat: flash 4; clear, colour and sealer 0 (ready to spray from the can)", "4");

    public static readonly AdviseArgument Retarder = Number(
        "retarder", "Retarder already in the cup", Measures.Retarder, "not mixed yet: the figures are for the recommended level", "5%");

    public static readonly AdviseArgument WetFilm = Number(
        "wet-film", "Wet film thickness", Measures.WetFilm, "by coat: flash 40, clear 75, colour and sealer 60 µm", "75um");

    public static readonly AdviseArgument AirSpeed = Number(
        "air-speed", "Air speed over the piece", Measures.AirSpeed, "0.5 m/s", "0.5m/s");

    public static readonly AdviseArgument Cup = Number(
        "cup", "Unretarded mix in the cup", Measures.Cup, "coat:cupMl of the configuration, as shipped 250 mL", "250mL");

    public static readonly AdviseArgument LacquerMaterial = Id("lacquer-material", "Lacquer", "by coat: the sealer, tinted or clear nitrocellulose lacquer", "\"nitrocellulose lacquer\"");

    public static readonly AdviseArgument ThinnerMaterial = Id("thinner-material", "Thinner", "coat:thinner of the configuration, as shipped ordinary thinner", "\"fast thinner\"");

    public static readonly AdviseArgument RetarderMaterial = Id("retarder-material", "Retarder", "coat:retarder of the configuration, as shipped 2-butoxyethanol", "2-butoxyethanol");

    public static readonly AdviseArgument Substrate = Id("substrate", "What the film lies on", "coat:substrate of the configuration, as shipped wood", "glass");

    public static readonly AdviseArgument Mix = new(
        "mix", "file", "A mix by solvent volume fractions, instead of lacquer and thinner", "a JSON file as docs/advise.md describes", "none", "mix.json");

    public static readonly AdviseArgument TemperatureTolerance = Number(
        "temperature-tolerance", "Tolerance (±) of the temperatures", Measures.TemperatureTolerance, "0.2 °C", "0.3C");

    public static readonly AdviseArgument HumidityTolerance = Number(
        "humidity-tolerance", "Tolerance (±) of the humidity", Measures.HumidityTolerance, "2 %RH", "3%");

    public static readonly AdviseArgument Margin = Number(
        "margin", "Required blush margin, for example the shop's own limit", Measures.Margin, "verdict:requiredMarginC of the configuration, as shipped 0.5 °C", "0.9C");

    /// <summary>In the order of the help.</summary>
    public static IReadOnlyList<AdviseArgument> All { get; } =
    [
        Temperature, Humidity, DewPoint, Pressure, Piece, Coat, Lacquer, Thinner, Retarder, WetFilm, AirSpeed, Cup,
        LacquerMaterial, ThinnerMaterial, RetarderMaterial, Substrate, Thickness, Mix, TemperatureTolerance, HumidityTolerance, Margin,
    ];

    private static AdviseArgument Number(string name, string meaning, Measure measure, string fallback, string example) =>
        new(name, "number", meaning, measure.Range, fallback, example, measure);

    private static AdviseArgument Id(string name, string meaning, string fallback, string example) =>
        new(name, "id", meaning, "an id from config/materials", fallback, example);
}
