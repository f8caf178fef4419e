using BoothWatch.Service.Commands.Advise;
using BoothWatch.Service.Tests.Advice;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Tests.Commands.Advise;

public class AdviseTextTests
{
    [Fact]
    public void Write_AnAnswer_ReadsAsReviewed() => Assert.Equal(
        """
        SPRAY: clear coat, add 15 mL retarder to 250 mL of mix (6 %)
          spray: dew point 18.6 °C, 2.5 °C under what that mix holds: mix 6 % retarder and spray

        Air                24.0 °C, 72 %RH, 1013 hPa
        Dew point          18.6 °C (standard uncertainty 0.3 °C)
        Piece              24.0 °C, wood, 4 mm
        Cup                nitrocellulose lacquer, unthinned; retarder 2-butoxyethanol
        Film               75 µm wet, air at 0.5 m/s

        With 6 % retarder:
        Critical humidity  84.3 % at this temperature (dew point 21.2 °C)
        Blush margin       +2.5 °C (standard uncertainty 0.7 °C)
        Coldest film       20.3 °C
        Sets in            3 min 10 s
        Water at set       0.01 g/m²

        Assumed: the piece is as warm as the air: no piece temperature was given.
        Tolerances: ±0.2 °C, ±2 %RH. Not measured here: exhaust, sensor quality, clock.
        This is advice about the finish only. It does not say that the air is safe to breathe or cannot ignite: keep the exhaust running, keep ignition sources away, wear the respirator that the lacquer's data sheet asks for, and follow the local fire and electrical code.
        """,
        AdviseText.Write(AdviseAnswers.Answered(), TemperatureUnit.Celsius));

    [Theory]
    [InlineData(null, 0.0, "SPRAY: clear coat, no retarder needed")]
    [InlineData(5.0, 6.0, "SPRAY: clear coat, 5 % retarder in the cup; add 2.5 mL more retarder (to 6 %)")]
    [InlineData(null, null, "SPRAY: clear coat, no retarder level holds this air: wait")]
    public void Write_StartsWithVerdictAndRetarder(double? loaded, double? recommended, string line) =>
        Assert.Equal(line, AdviseText.Write(AdviseAnswers.Answered(loaded, recommended), TemperatureUnit.Celsius).Split('\n')[0]);

    [Fact]
    public async Task Advise_OfMoreRetarderThanTheAirNeeds_SaysSoOnce()
    {
        CommandResult result = await CommandRun.With("advise --temperature 24C --humidity 40% --retarder 10%");

        Assert.Equal("SPRAY: clear coat, in the cup 10 %: enough", result.Out.Split('\n')[0]);
        Assert.Single(result.Out.Split('\n'), line => line.Contains("this air needs none", StringComparison.Ordinal));
    }

    [Fact]
    public void Write_InFahrenheit_LeavesNoCelsius()
    {
        // °F = °C x 1.8 + 32, a difference without the offset. The reason of this answer was made by hand in °C.
        string[] lines = [.. AdviseText.Write(AdviseAnswers.Answered(), TemperatureUnit.Fahrenheit).Split('\n').Where(line => !line.Contains("spray:", StringComparison.Ordinal))];

        Assert.Contains("Air                75.2 °F, 72 %RH, 1013 hPa", lines);
        Assert.Contains("Dew point          65.6 °F (standard uncertainty 0.5 °F)", lines);
        Assert.Contains("Blush margin       +4.6 °F (standard uncertainty 1.3 °F)", lines);
        Assert.Contains(lines, line => line.StartsWith("Tolerances: ±0.36 °F, ", StringComparison.Ordinal));
        Assert.DoesNotContain(lines, line => line.Contains("°C", StringComparison.Ordinal));
    }

    [Fact]
    public void WriteRow_InFahrenheit_ConvertsUnderItsHeader()
    {
        Assert.Equal(
            "line  verdict     air °F   RH %  dew °F  piece °F  coat    retarder  critical RH   margin °F  why",
            AdviseText.TableHeader(TemperatureUnit.Fahrenheit));
        Assert.StartsWith(
            "   7  spray         75.2   72.0    65.6      75.2  clear        6 %       84.3 %   +4.6 ±1.3  ",
            AdviseText.WriteRow(AdviseAnswers.Answered(), TemperatureUnit.Fahrenheit, line: 7),
            StringComparison.Ordinal);
    }

    [Fact]
    public void Write_WithoutAFilmAnswer_SaysWaitAndWhy()
    {
        string[] lines = AdviseText.Write(AdviseAnswers.NotAnswered(), TemperatureUnit.Celsius).Split('\n');

        Assert.Equal("WAIT: clear coat, the model has no answer", lines[0]);
        Assert.Equal("  wait: the film model gave no answer: wait", lines[1]);
        Assert.DoesNotContain(lines, line => line.StartsWith("Blush margin", StringComparison.Ordinal));
    }

    [Fact]
    public void WriteRow_StandsBelowItsHeader()
    {
        string row = AdviseText.WriteRow(AdviseAnswers.Answered(verdict: Verdict.SlowDown), TemperatureUnit.Celsius, line: 7);

        Assert.Equal("   7  slow down     24.0   72.0    18.6      24.0  clear        6 %       84.3 %   +2.5 ±0.7  dew point 18.6 °C, 2.5 °C under what that mix holds: mix 6 % retarder and spray", row);
        Assert.Equal(AdviseText.TableHeader(TemperatureUnit.Celsius).IndexOf("why", StringComparison.Ordinal), row.IndexOf("dew point", StringComparison.Ordinal));
        Assert.Equal(AdviseText.TableHeader(TemperatureUnit.Celsius).IndexOf("coat", StringComparison.Ordinal), row.IndexOf("clear", StringComparison.Ordinal));
    }

    [Fact]
    public void WriteRow_WithoutAFilmAnswer_KeepsTheColumns() =>
        Assert.Equal(
            AdviseText.TableHeader(TemperatureUnit.Celsius).IndexOf("why", StringComparison.Ordinal),
            AdviseText.WriteRow(AdviseAnswers.NotAnswered(), TemperatureUnit.Celsius, line: 7).IndexOf("the film model", StringComparison.Ordinal));
}
