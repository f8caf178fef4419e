using BoothWatch.Film;
using BoothWatch.Service.Advice;
using BoothWatch.Service.Coat;

namespace BoothWatch.Service.Tests.Advice;

public class AdviseRequestParserTests
{
    private static readonly AdviseDefaults Defaults = AdviseDefaults.From(new BoothOptions(), new CoatOptions());

    [Fact]
    public void AirAlone_TakesTheStatedDefaults()
    {
        AdviseRequest request = Good("temperature=24", "humidity=55");

        Assert.Equal(24, request.Air.TemperatureC);
        Assert.Equal(55, request.Air.RelativeHumidityPct);
        Assert.Equal(101_325, request.Air.PressurePa, 1);
        Assert.Equal(24, request.PieceC);
        Assert.Contains(request.Assumed, text => text.Contains("as warm as the air", StringComparison.Ordinal));
        Assert.Equal(CoatKind.Clear, request.Coat.Kind);
        Assert.Equal((1, 0), (request.Coat.LacquerParts!.Value, request.Coat.ThinnerParts!.Value));
        Assert.Null(request.Coat.LoadedRetarderPct);
        Assert.Equal(75, request.Coat.WetFilmUm);
        Assert.Equal(0.5, request.Coat.AirSpeedMPerS);
        Assert.Equal((0.2, 2), (request.TemperatureToleranceC, request.HumidityTolerancePct));
    }

    [Fact]
    public void FlashCoat_IsFourPartsThinnerAndThin()
    {
        AdviseRequest request = Good("temperature=24", "humidity=55", "coat=FLASH");

        Assert.Equal((CoatKind.Flash, 1.0, 4.0, 40.0), (request.Coat.Kind, request.Coat.LacquerParts, request.Coat.ThinnerParts, request.Coat.WetFilmUm));
    }

    [Fact]
    public void OwnSettings_HoldForTheConfiguredKindOnly()
    {
        var shop = new CoatOptions { Kind = CoatKind.Clear, ThinnerParts = 1, WetFilmUm = 90, AirSpeedMPerS = 0.3 };
        AdviseDefaults defaults = AdviseDefaults.From(new BoothOptions { AltitudeM = 1000 }, shop);

        AdviseRequest clear = AdviseRequestParser.Parse(defaults, Given("temperature=24", "humidity=55"), out _)!;
        AdviseRequest flash = AdviseRequestParser.Parse(defaults, Given("temperature=24", "humidity=55", "coat=flash"), out _)!;

        Assert.Equal((1.0, 90.0, 0.3), (clear.Coat.ThinnerParts, clear.Coat.WetFilmUm, clear.Coat.AirSpeedMPerS));
        Assert.Equal((4.0, 40.0, 0.3), (flash.Coat.ThinnerParts, flash.Coat.WetFilmUm, flash.Coat.AirSpeedMPerS));
        // ICAO standard atmosphere (Doc 7488), table value at 1000 m: 898.746 hPa
        Assert.Equal(89_874.6, clear.Air.PressurePa, 3.0);
    }

    [Fact]
    public void Margin_IsThatOfTheSettingsUnlessGiven()
    {
        AdviseDefaults shop = Defaults with { MissesShopLimit = true };
        AdviseRequest plain = AdviseRequestParser.Parse(shop, Given("temperature=24", "humidity=55"), out _)!;
        AdviseRequest given = AdviseRequestParser.Parse(shop, Given("temperature=24", "humidity=55", "margin=1.8F"), out _)!;
        Assert.Null(plain.RequiredMarginC);
        Assert.Contains(plain.Assumed, text => text.Contains("--margin", StringComparison.Ordinal));
        Assert.Equal(1, given.RequiredMarginC!.Value, 9);
        Assert.DoesNotContain(given.Assumed, text => text.Contains("--margin", StringComparison.Ordinal));
        Assert.DoesNotContain(Good("temperature=24", "humidity=55").Assumed, text => text.Contains("--margin", StringComparison.Ordinal));
    }

    [Fact]
    public void DewPoint_InsteadOfHumidity_GivesTheSameAir()
    {
        AdviseRequest request = Good("temperature=68F", "dew-point=9.27");

        // DESIGN check value: 20 °C and 50 % have a dew point of 9.3 °C (ASHRAE psychrometric table)
        Assert.Equal(50, request.Air.RelativeHumidityPct, 0.2);
    }

    [Theory]
    [InlineData("humidity=55", "temperature", "missing", "24C")]
    [InlineData("temperature=24", "humidity", "missing", "55%")]
    [InlineData("temperature=24 humidity=55 dew-point=12", "humidity", "dew point is given too", "55%")]
    [InlineData("temperature=24 dew-point=24.1", "dew-point", "above the air temperature", "14.5C")]
    [InlineData("temperature=240 humidity=55", "temperature", "-15 to 55 °C", "24C")]
    [InlineData("temperature=24 humidity=155%", "humidity", "1 to 100 %", "55%")]
    [InlineData("temperature=24 humidity=0.55", "humidity", "percent", "55%")]
    [InlineData("temperature=24 humidity=0", "humidity", "1 to 100 %", "55%")]
    [InlineData("temperature=24 humidity=55 pressure=2000hPa", "pressure", "500 to 1100 hPa", "1013hPa")]
    [InlineData("temperature=24 humidity=55 piece=hot", "piece", "-15 to 55 °C", "22C")]
    [InlineData("temperature=24 humidity=55 coat=gloss", "coat", "flash, clear, colour, sealer", "clear")]
    [InlineData("temperature=24 humidity=55 coat=1", "coat", "flash, clear, colour, sealer", "clear")]
    [InlineData("temperature=24 humidity=55 margin=11", "margin", "0 to 10 °C", "0.9C")]
    [InlineData("temperature=24 humidity=55 lacquer=0", "lacquer", "nothing sets", "1")]
    [InlineData("temperature=24 humidity=55 thinner=-1", "thinner", "parts by volume from 0 to 100", "4")]
    [InlineData("temperature=24 humidity=55 retarder=40%", "retarder", "0 to 30 %", "5%")]
    [InlineData("temperature=24 humidity=55 wet-film=3m", "wet-film", "'m' is not a unit", "75um")]
    [InlineData("temperature=24 humidity=55 air-speed=9", "air-speed", "0 to 5 m/s", "0.5m/s")]
    [InlineData("temperature=24 humidity=55 thickness=1m", "thickness", "'m' is not a unit", "40mm")]
    [InlineData("temperature=24 humidity=55 cup=1", "cup", "10 to 20000 mL", "250mL")]
    [InlineData("temperature=24 humidity=55 temperature-tolerance=9", "temperature-tolerance", "0 to 5 °C", "0.3C")]
    [InlineData("temperature=24 humidity=55 humidity-tolerance=30", "humidity-tolerance", "0 to 20 %RH", "3%")]
    [InlineData("temperature=24 humidity=55 mix=there-is-none.json", "mix", "there is no such file", "")]
    public void WrongArgument_IsNamedWithRangeAndExample(string arguments, string field, string says, string example)
    {
        AdviseRequest? request = AdviseRequestParser.Parse(Defaults, Given(arguments.Split(' ')), out IReadOnlyList<ArgumentError> errors);

        Assert.Null(request);
        ArgumentError error = Assert.Single(errors);
        Assert.Equal(field, error.Field);
        Assert.Contains(says, error.Problem, StringComparison.Ordinal);
        Assert.EndsWith(example, error.Problem, StringComparison.Ordinal);
        if (error.Value is not null)
        {
            Assert.StartsWith($"--{field} is '{error.Value}': ", error.OnCommandLine, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void SeveralWrongArguments_AreAllNamedAtOnce()
    {
        AdviseRequestParser.Parse(Defaults, Given("temperature=x", "humidity=y", "coat=z"), out IReadOnlyList<ArgumentError> errors);

        Assert.Equal(["coat", "humidity", "temperature"], errors.Select(error => error.Field).Order());
    }

    private static AdviseRequest Good(params string[] arguments)
    {
        AdviseRequest? request = AdviseRequestParser.Parse(Defaults, Given(arguments), out IReadOnlyList<ArgumentError> errors);
        Assert.Empty(errors);
        return request!;
    }

    private static Dictionary<string, string> Given(params string[] arguments) =>
        arguments.Select(argument => argument.Split('=', 2)).ToDictionary(pair => pair[0], pair => pair[1]);
}
