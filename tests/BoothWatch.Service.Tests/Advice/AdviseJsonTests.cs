using System.Text.Json.Nodes;
using System.Text.Json;
using BoothWatch.Service.Advice;
using BoothWatch.Service.Tests.Commands;
using BoothWatch.Verdicts;

namespace BoothWatch.Service.Tests.Advice;

public class AdviseJsonTests
{
    [Fact]
    public void Write_AnAnswer_FitsTheSchemaAndHasTheFigures()
    {
        string json = AdviseJson.Write(AdviseAnswers.Answered(verdict: Verdict.SlowDown));

        Assert.True(AdviseSchema.Accepts(json), json);
        Assert.DoesNotContain('\n', json);
        JsonElement answer = AdviseSchema.Parse(json);
        Assert.Equal("slow down", answer.GetProperty("verdict").GetString());
        Assert.Equal(6, answer.GetProperty("retarderPct").GetDouble());
        Assert.Equal(18.643, answer.GetProperty("dewPointC").GetDouble());
        Assert.Equal(84.26, answer.GetProperty("criticalHumidityPct").GetDouble());
        Assert.Equal(2.531, answer.GetProperty("blushMarginC").GetDouble());
        Assert.Equal(0.701, answer.GetProperty("marginUncertaintyC").GetDouble());
        Assert.Equal(20.26, answer.GetProperty("lowestFilmTemperatureC").GetDouble());
        Assert.Equal(190.4, answer.GetProperty("timeToSetS").GetDouble());
        Assert.Equal(0.012, answer.GetProperty("waterAtSetGPerM2").GetDouble());
        Assert.Equal("blush-margin", answer.GetProperty("reasons")[0].GetProperty("rule").GetString());
        Assert.Contains("°", json, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Json_OfACupThatHoldsSomeRetarder_SaysWhatIsMissing()
    {
        // By volume of the unretarded cup: 400 mL, 3 % are in it, and the rest to the recommended level is missing.
        string line = "advise --temperature 24C --humidity 80% --coat flash --cup 400mL --json";
        JsonElement mixed = AdviseSchema.Parse((await CommandRun.With(line + " --retarder 3%")).Out);
        JsonElement empty = AdviseSchema.Parse((await CommandRun.With(line)).Out);
        JsonElement enough = AdviseSchema.Parse((await CommandRun.With("advise --temperature 24C --humidity 40% --retarder 10% --json")).Out);

        double level = mixed.GetProperty("retarderPct").GetDouble();
        Assert.InRange(level, 4, 15);
        Assert.Equal(400 * (level - 3) / 100, mixed.GetProperty("retarderToAddMl").GetDouble(), 3);
        Assert.Equal(400 * level / 100, empty.GetProperty("retarderToAddMl").GetDouble(), 3);
        Assert.Equal(0, enough.GetProperty("retarderToAddMl").GetDouble());
    }

    [Fact]
    public void Write_InATable_NamesRowAndLine()
    {
        string json = AdviseJson.Write(AdviseAnswers.Answered(), row: 2, line: 4);

        Assert.True(AdviseSchema.Accepts(json), json);
        Assert.StartsWith("""{"row":2,"line":4,"verdict":"spray",""", json, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_WhereNoLevelServes_HasANullLevel()
    {
        string json = AdviseJson.Write(AdviseAnswers.Answered(recommendedPct: null, verdict: Verdict.Wait));

        Assert.True(AdviseSchema.Accepts(json), json);
        Assert.Contains("\"retarderPct\":null,\"retarderMl\":null,\"retarderToAddMl\":null", json, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_WithoutAFilmAnswer_FitsTheSchemaAndWaits()
    {
        string json = AdviseJson.Write(AdviseAnswers.NotAnswered());

        Assert.True(AdviseSchema.Accepts(json), json);
        Assert.Contains("\"verdict\":\"wait\"", json, StringComparison.Ordinal);
        Assert.Contains("\"blushMarginC\":null", json, StringComparison.Ordinal);
    }

    [Fact]
    public void WriteErrors_FitsTheSchemaAndWaits()
    {
        string json = AdviseJson.WriteErrors([new ArgumentError("humidity", "155", "out of range"), new ArgumentError("", null, "3 cells")], row: 2, line: 4);

        Assert.True(AdviseSchema.Accepts(json), json);
        Assert.Equal(
            """{"row":2,"line":4,"verdict":"wait","errors":[{"field":"humidity","value":"155","message":"humidity is '155': out of range"},{"field":null,"value":null,"message":"3 cells"}]}""",
            json);
    }

    [Theory]
    [InlineData("blushMarginC")]
    [InlineData("retarderToAddMl")]
    [InlineData("reasons")]
    [InlineData("verdict")]
    public void Schema_WithoutARequiredMember_Refuses(string member)
    {
        JsonObject answer = JsonNode.Parse(AdviseJson.Write(AdviseAnswers.Answered()))!.AsObject();
        answer.Remove(member);

        Assert.False(AdviseSchema.Accepts(answer.ToJsonString()));
    }

    [Theory]
    [InlineData("\"verdict\":\"spray\"", "\"verdict\":\"Spray\"")]
    [InlineData("\"dewPointC\":18.643", "\"dewPointC\":\"18.643\"")]
    [InlineData("\"criticalHumidityPct\":84.26", "\"criticalHumidityPct\":184.26")]
    [InlineData("\"coat\":\"clear\"", "\"coat\":\"gloss\"")]
    [InlineData("\"assumed\"", "\"presumed\"")]
    public void Schema_WithAWrongMember_Refuses(string good, string wrong)
    {
        string json = AdviseJson.Write(AdviseAnswers.Answered());

        Assert.Contains(good, json, StringComparison.Ordinal);
        Assert.False(AdviseSchema.Accepts(json.Replace(good, wrong, StringComparison.Ordinal)));
    }
}
