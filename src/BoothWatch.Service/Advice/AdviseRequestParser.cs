using BoothWatch.Air;
using BoothWatch.Film;
using BoothWatch.Service.Coat;

namespace BoothWatch.Service.Advice;

/// <summary>Reads one set of arguments, from the command line or a table row alike, and finds everything that is wrong with it.</summary>
internal sealed class AdviseRequestParser(AdviseDefaults defaults, IReadOnlyDictionary<string, string> given)
{
    private readonly List<ArgumentError> _errors = [];
    private readonly List<string> _assumed = [];

    /// <summary>The request, or null and all errors.</summary>
    /// <param name="defaults">What holds where nothing is given.</param>
    /// <param name="given">Values by argument name; blank ones count as not given.</param>
    /// <param name="errors">What is wrong; empty when nothing is.</param>
    public static AdviseRequest? Parse(AdviseDefaults defaults, IReadOnlyDictionary<string, string> given, out IReadOnlyList<ArgumentError> errors)
    {
        var parser = new AdviseRequestParser(defaults, given);
        AdviseRequest? request = parser.Parse();
        errors = parser._errors;
        return request;
    }

    private AdviseRequest? Parse()
    {
        MoistAir? air = ReadAir();
        double? piece = Number(AdviseArguments.Piece);
        CoatKind kind = ReadKind();
        MixFile? mix = ReadMix();
        CoatHabits habits = CoatHabits.For(kind);
        CoatOptions? shop = kind == defaults.Coat.Kind ? defaults.Coat : null;

        double lacquer = Number(AdviseArguments.Lacquer) ?? shop?.LacquerParts ?? habits.LacquerParts;
        double thinner = Number(AdviseArguments.Thinner) ?? shop?.ThinnerParts ?? habits.ThinnerParts;
        if (lacquer <= 0)
        {
            _errors.Add(AdviseArguments.Lacquer.Error(Text(AdviseArguments.Lacquer), "without lacquer nothing sets"));
        }

        double? retarder = Number(AdviseArguments.Retarder);
        double wetFilm = Number(AdviseArguments.WetFilm) ?? mix?.WetFilmUm ?? shop?.WetFilmUm ?? habits.WetFilmUm;
        double airSpeed = Number(AdviseArguments.AirSpeed) ?? defaults.Coat.AirSpeedMPerS;
        double? thickness = Number(AdviseArguments.Thickness) ?? defaults.Coat.PieceThicknessMm;
        double cup = Number(AdviseArguments.Cup) ?? defaults.Coat.CupMl;
        double temperatureTolerance = Number(AdviseArguments.TemperatureTolerance) ?? AdviseDefaults.TemperatureToleranceC;
        double humidityTolerance = Number(AdviseArguments.HumidityTolerance) ?? AdviseDefaults.HumidityTolerancePct;
        double? margin = Number(AdviseArguments.Margin);
        if (air is null || _errors.Count > 0)
        {
            return null;
        }

        if (piece is null)
        {
            _assumed.Add("the piece is as warm as the air: no piece temperature was given");
        }

        if (defaults.MissesShopLimit && margin is null)
        {
            _assumed.Add("the required margin is that of the settings: the shop's own limit is in the journal, the page /limit shows it, and --margin takes it");
        }

        return new AdviseRequest
        {
            Air = air,
            PieceC = piece ?? air.TemperatureC,
            Coat = new CoatOptions
            {
                Kind = kind,
                Lacquer = Text(AdviseArguments.LacquerMaterial) ?? shop?.Lacquer ?? habits.Lacquer,
                Thinner = Text(AdviseArguments.ThinnerMaterial) ?? defaults.Coat.Thinner,
                Retarder = Text(AdviseArguments.RetarderMaterial) ?? defaults.Coat.Retarder,
                Substrate = Text(AdviseArguments.Substrate) ?? mix?.SubstrateId ?? defaults.Coat.Substrate,
                LacquerParts = lacquer,
                ThinnerParts = thinner,
                LoadedRetarderPct = retarder ?? (mix is null ? null : 0), // a mix file is asked about as it stands
                RetarderHighestPct = defaults.Coat.RetarderHighestPct,
                RetarderStepPct = defaults.Coat.RetarderStepPct,
                WetFilmUm = wetFilm,
                AirSpeedMPerS = airSpeed,
                PieceThicknessMm = thickness,
                CupMl = cup,
            },
            Mix = mix,
            Substrate = Text(AdviseArguments.Substrate) is null ? mix?.OwnSubstrate : null,
            TemperatureToleranceC = temperatureTolerance,
            HumidityTolerancePct = humidityTolerance,
            RequiredMarginC = margin,
            Assumed = _assumed,
        };
    }

    private MoistAir? ReadAir()
    {
        double? temperature = Number(AdviseArguments.Temperature);
        if (temperature is null && Text(AdviseArguments.Temperature) is null)
        {
            _errors.Add(AdviseArguments.Temperature.Error(null, "it is missing"));
        }

        double? humidity = Number(AdviseArguments.Humidity);
        double? dewPoint = Number(AdviseArguments.DewPoint);
        double pressure = Number(AdviseArguments.Pressure) ?? defaults.PressurePa;
        bool hasHumidity = Text(AdviseArguments.Humidity) is not null;
        bool hasDewPoint = Text(AdviseArguments.DewPoint) is not null;
        if (hasHumidity == hasDewPoint)
        {
            _errors.Add(AdviseArguments.Humidity.Error(
                Text(AdviseArguments.Humidity),
                hasHumidity ? "a dew point is given too, and one of them is enough" : "it is missing, and so is the dew point"));
            return null;
        }

        if (temperature is not { } t || (humidity ?? dewPoint) is not { } moisture)
        {
            return null;
        }

        if (hasHumidity)
        {
            return MoistAir.FromRelativeHumidity(t, moisture, pressure);
        }

        if (moisture > t)
        {
            _errors.Add(AdviseArguments.DewPoint.Error(Text(AdviseArguments.DewPoint), "the dew point is above the air temperature"));
            return null;
        }

        return MoistAir.FromDewPoint(t, moisture, pressure);
    }

    private CoatKind ReadKind()
    {
        if (Text(AdviseArguments.Coat) is not { } text)
        {
            return defaults.Coat.Kind;
        }

        if (!int.TryParse(text, out _) && Enum.TryParse(text, ignoreCase: true, out CoatKind kind) && Enum.IsDefined(kind))
        {
            return kind;
        }

        _errors.Add(AdviseArguments.Coat.Error(text, "that is not a kind of coat"));
        return defaults.Coat.Kind;
    }

    private MixFile? ReadMix()
    {
        if (Text(AdviseArguments.Mix) is not { } path)
        {
            return null;
        }

        foreach (AdviseArgument excluded in (AdviseArgument[])[AdviseArguments.Lacquer, AdviseArguments.Thinner, AdviseArguments.LacquerMaterial, AdviseArguments.ThinnerMaterial])
        {
            if (Text(excluded) is { } value)
            {
                _errors.Add(new ArgumentError(excluded.Name, value, "a mix file already says what is in the cup; leave one of the two out"));
            }
        }

        MixFile? mix = MixFileReader.Read(path, out IReadOnlyList<string> problems);
        _errors.AddRange(problems.Select(problem => new ArgumentError(AdviseArguments.Mix.Name, path, problem)));
        return mix;
    }

    private double? Number(AdviseArgument argument)
    {
        if (Text(argument) is not { } text)
        {
            return null;
        }

        if (argument.Measure!.TryRead(text, out double value, out string? problem))
        {
            return value;
        }

        if (argument == AdviseArguments.Humidity && value is > 0 and < 1)
        {
            problem = "that looks like a fraction; humidity is in percent";
        }

        _errors.Add(argument.Error(text, problem!));
        return null;
    }

    private string? Text(AdviseArgument argument) =>
        given.TryGetValue(argument.Name, out string? text) && !string.IsNullOrWhiteSpace(text) ? text.Trim() : null;
}
